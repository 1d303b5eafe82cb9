// A server with its page in a headless browser, and what the command line says of the same axle.
import { spawn, spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";

const need = createRequire(join(process.env.PAGE_TOOLS, "any.js"));
const { chromium } = need("playwright-core");
const axe = readFileSync(need.resolve("axe-core/axe.min.js"), "utf8");
const program = process.env.AXLEBOW;
export const root = new URL("../..", import.meta.url).pathname;

/** Starts a server; gives its address and how to end it. */
export function serve(...more) {
  const run = spawn(program, ["serve", "--no-browser", ...more], { cwd: root, stdio: ["ignore", "pipe", "inherit"] });
  return new Promise((resolve, reject) => {
    run.stdout.once("data", data => resolve({ address: String(data).trim(), end: () => run.kill("SIGINT"), run }));
    run.once("error", reject);
  });
}

/** What a command prints as JSON, whether its checks hold or not. */
export function printed(...command) {
  const run = spawnSync(program, [...command, "--json"], { cwd: root, encoding: "utf8", maxBuffer: 1 << 26 });
  if (run.status > 1) throw new Error(run.stderr);
  return JSON.parse(run.stdout);
}

export const open = () => chromium.launch({ executablePath: process.env.CHROMIUM, args: ["--no-sandbox"] });

/** A page at an address, and the list of what went wrong on it. */
export async function visit(browser, address, options = {}) {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, ...options });
  const page = await context.newPage();
  const wrong = [];
  page.on("console", message => ["error", "warning"].includes(message.type()) && wrong.push(message.text()));
  page.on("pageerror", error => wrong.push(String(error)));
  const own = new URL(address).origin;
  page.on("request", request => {
    if (!request.url().startsWith(own) && !/^(data|blob|file):/.test(request.url())) wrong.push(`asked ${request.url()}`);
  });
  // The page's files as they are now, without a build of the program.
  if (process.env.PAGE_FILES) {
    await context.route(/\.(js|css)$/, route => {
      const name = new URL(route.request().url()).pathname.split("/").pop();
      route.fulfill({ body: readFileSync(join(process.env.PAGE_FILES, name), "utf8"), contentType: name.endsWith("css") ? "text/css" : "text/javascript" });
    });
  }
  await page.goto(address);
  return { page, wrong, context };
}

/** Waits until every figure is worked out. */
export const settled = page => page.waitForFunction(() =>
  document.querySelector("#top").ariaBusy === "false" && document.querySelectorAll("#strip .cell").length >= 5 && document.querySelectorAll("#strip .pending").length === 0, null, { timeout: 60000 });

/** Moves a slider by its value, as a reader does by keys or pointer. */
export const move = (page, key, value) => page.locator(`#control-${key}`).evaluate((input, to) => {
  if (input.type === "checkbox") input.checked = to;
  else input.value = to;
  input.dispatchEvent(new input.ownerDocument.defaultView.Event("input", { bubbles: true }));
}, value);

/** Violations that keep people out. */
export async function barriers(page) {
  await page.evaluate(axe);
  const found = await page.evaluate(() => window.axe.run(document, { resultTypes: ["violations"] }));
  const grave = found.violations.filter(own => ["serious", "critical"].includes(own.impact));
  return grave.map(own => `${own.id}: ${own.help}: ${own.nodes.slice(0, 3).map(node => node.html.slice(0, 160)).join(" | ")}`);
}

/** A screenshot, where they were asked for. */
export async function shot(page, name, options = {}) {
  if (process.env.SHOTS) await page.screenshot({ path: join(process.env.SHOTS, `${name}.png`), ...options });
}
