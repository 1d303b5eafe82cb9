// Pages that are kept in reports/, as a reader opens them.
import assert from "node:assert/strict";
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { pathToFileURL } from "node:url";
import { barriers, open, root, visit } from "./support.mjs";

let browser;
before(async () => {
  browser = await open();
});
after(() => browser?.close());

for (const name of readdirSync(join(root, "reports")).filter(own => own.endsWith(".html"))) {
  for (const options of [{}, { colorScheme: "dark" }, { viewport: { width: 390, height: 844 } }]) {
    test(`${name} ${JSON.stringify(options)}: nobody is kept out, nothing comes from elsewhere`, async () => {
      const { page, wrong, context } = await visit(browser, pathToFileURL(join(root, "reports", name)).href, options);
      assert.deepEqual(await barriers(page), []);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
      assert.ok(wide <= 0, `${wide} pixels too wide`);
      assert.deepEqual(wrong, []);
      await context.close();
    });
  }
}
