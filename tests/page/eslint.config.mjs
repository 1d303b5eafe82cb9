// Lints of the page's scripts and of their tests.
const browser = ["document", "window", "fetch", "AbortController", "performance", "requestAnimationFrame", "cancelAnimationFrame", "matchMedia",
  "addEventListener", "setTimeout", "clearTimeout", "setInterval", "URL", "Blob"];
const node = ["process", "console", "URL", "setTimeout", "document", "window", "matchMedia"];
const globals = list => Object.fromEntries(list.map(name => [name, "readonly"]));
const rules = {
  "no-undef": "error", "no-unused-vars": "error", "prefer-const": "error", "no-var": "error", eqeqeq: "error", "no-shadow": "error",
  "no-implied-eval": "error", "no-eval": "error", "no-new-func": "error", "no-unreachable": "error", "no-dupe-keys": "error",
  "no-self-compare": "error", "no-use-before-define": ["error", { functions: false, classes: false, variables: false }],
  "max-lines": ["error", 400], "no-restricted-properties": ["error", { property: "innerHTML" }, { property: "outerHTML" },
    { property: "insertAdjacentHTML" }, { object: "document", property: "write" }],
};

export default [
  { files: ["**/crates/serve/page/*.js"], languageOptions: { ecmaVersion: 2024, sourceType: "module", globals: globals(browser) }, rules },
  { files: ["**/tests/page/*.mjs"], languageOptions: { ecmaVersion: 2024, sourceType: "module", globals: globals(node) }, rules },
];
