// What a reader does on the live page.
import assert from "node:assert/strict";
import { copyFileSync, mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, before, test } from "node:test";
import { barriers, move, open, printed, root, serve, settled, shot, visit } from "./support.mjs";

const MODEL = "models/trailer-152-thin-dual.toml";
let browser, server;
before(async () => {
  browser = await open();
  server = await serve(MODEL);
});
after(async () => {
  await browser?.close();
  server?.end();
});

const value = (page, key) => page.locator(`#cell-${key} .value`).innerText();
const plain = words => Number(words.replace("\u2212", "-").match(/-?[\d.]+/)[0]);

test("figures are those of the command line and move with the sliders", async () => {
  const { page, wrong, context } = await visit(browser, server.address);
  await settled(page);
  const agree = async sets => {
    const changes = sets.flatMap(own => ["--set", own]);
    const flex = printed("flex", MODEL, "--case", "rated-load", ...changes);
    const strength = printed("strength", MODEL, ...changes);
    const rating = printed("rating", MODEL, ...changes);
    const camber = flex.cases[0].wheels.left.camber_rad * 180 / Math.PI;
    assert.equal(plain(await value(page, "camber")), Number(camber.toFixed(2)));
    assert.equal(plain(await value(page, "mass")), Number(flex.axle_mass_kg.toPrecision(3)));
    const checks = [...strength.walls, ...strength.bearings, ...strength.cases.flatMap(own => own.checks)];
    const most = Math.max(...checks.filter(own => own.verdict !== "watch").map(own => own.utilization));
    assert.equal(plain(await value(page, "check")), Math.round(100 * most));
    const own = rating.points.find(point => Math.abs(point.offset_m - rating.own_offset_m) < 1e-9);
    assert.equal(plain(await value(page, "rating")), Number((own.load_n / 1e3).toPrecision(3)));
    const tire = printed("tire", MODEL, "--case", "rated-load", ...changes);
    assert.ok((await page.locator("#answer").innerText()).replaceAll("\u00a0", " ").startsWith(tire.answer[0]));
  };
  await agree([]);
  // Dragged, not set: only the last value counts.
  for (let wall = 9.1; wall < 12.05; wall += 0.1) await move(page, "wall", wall.toFixed(1));
  await move(page, "wheel-offset", 30);
  await page.waitForFunction(() => document.querySelectorAll("#strip .pending").length > 0);
  await settled(page);
  await agree(["tube.wall=12 mm", "wheel.position=outset", "wheel.offset=30 mm"]);
  assert.match(await page.locator("#command").innerText(), /--set 'tube.wall=12 mm'/);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a slider is moved by keys and says its value with its unit", async () => {
  const { page, wrong, context } = await visit(browser, server.address);
  await settled(page);
  await page.locator("#control-wall").focus();
  const first = await value(page, "camber");
  for (let i = 0; i < 20; i += 1) await page.keyboard.press("ArrowRight");
  await settled(page);
  assert.notEqual(await value(page, "camber"), first);
  assert.equal(await page.locator("#control-wall").getAttribute("aria-valuetext"), "11.0\u00a0mm");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a baseline is pinned, differences are shown, and the start comes back", async () => {
  const { page, wrong, context } = await visit(browser, server.address);
  await settled(page);
  const change = key => page.locator(`#cell-${key} .change`).innerText();
  assert.equal(await change("camber"), "as the baseline");
  await move(page, "wall", 12);
  await settled(page);
  assert.match(await change("camber"), /^\+0\.\d+\sdeg$/);
  assert.match(await change("mass"), /^\+\d/);
  await page.locator("#pin").click();
  assert.equal(await change("mass"), "as the baseline");
  await page.locator("#reset").click();
  await settled(page);
  assert.match(await change("mass"), /^\u2212\d/);
  assert.equal(await page.locator("#control-wall").inputValue(), "9");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("values that make no axle are told and the last good picture stays", async () => {
  const { page, context } = await visit(browser, server.address);
  await settled(page);
  const steel = () => page.locator("#sheet .steel").first().getAttribute("points");
  const first = await steel();
  await move(page, "stiffener-size", "L50x50x5");
  await settled(page);
  await move(page, "seat-width", 180);
  await move(page, "seat-place", 370);
  await page.waitForSelector("#problems, #strip .pending");
  assert.notEqual(await steel(), first);
  assert.ok(await page.locator("#sheet .steel").count() > 0);
  assert.equal(await page.locator("#cautions").isVisible(), true);
  await context.close();
});

test("tires stand on the road however much the lean is enlarged", async () => {
  const { page, context } = await visit(browser, server.address);
  await settled(page);
  await move(page, "wall", 4.5);
  await settled(page);
  const gaps = await page.evaluate(() => {
    const road = document.querySelector("#sheet .surface").getBoundingClientRect();
    return [...document.querySelectorAll("#sheet .tire")].map(own => own.getBoundingClientRect().bottom - (road.top + road.bottom) / 2);
  });
  assert.equal(gaps.length, 4);
  for (const gap of gaps) assert.ok(Math.abs(gap) < 1.5, `${gap} pixels`);
  await context.close();
});

test("the bump moves the axle and ends at rest", async () => {
  const { page, wrong, context } = await visit(browser, server.address);
  await settled(page);
  const still = await page.locator("#sheet .steel").first().getAttribute("points");
  await page.locator("#play").click();
  await page.waitForFunction(points => document.querySelector("#sheet .steel").getAttribute("points") !== points, still, { timeout: 30000 });
  await page.waitForTimeout(1500);
  assert.match(await page.locator("#bump-answer").innerText(), /peak to peak/);
  await shot(page, "bump");
  await page.locator("#play").click();
  assert.equal(await page.locator("#sheet .steel").first().getAttribute("points"), still);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("remedies are ranked and the report opens", async () => {
  const { page, wrong, context } = await visit(browser, server.address);
  await settled(page);
  await page.locator("#try").click();
  await page.waitForSelector("#remedies table", { timeout: 60000 });
  const wears = (await page.locator("#remedies tbody td:nth-child(3)").allInnerTexts()).map(Number);
  const expected = printed("remedies", MODEL).remedies.map(own => Number(own.state.shoulder.wear.toFixed(2)));
  assert.deepEqual(wears, expected);
  await shot(page, "remedies", { fullPage: true });
  const [report] = await Promise.all([context.waitForEvent("page"), page.locator("#report").click()]);
  await report.waitForSelector("h1", { timeout: 60000 });
  assert.match(await report.locator("h1").first().innerText(), /thin-wall/);
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a remedy goes into the axle, its controls with it, and the start comes back", async () => {
  const { page, wrong, context } = await visit(browser, server.address);
  await settled(page);
  await page.locator("#try").click();
  await page.waitForSelector("#remedies table", { timeout: 60000 });
  await page.getByRole("button", { name: "Put in: heavier wall", exact: true }).click();
  await page.waitForFunction(() => document.querySelector("#saved").textContent.startsWith("In the axle now"));
  await settled(page);
  const flex = printed("flex", MODEL, "--case", "rated-load", "--set", "tube.wall=11 mm");
  assert.equal(plain(await value(page, "camber")), Number((flex.cases[0].wheels.left.camber_rad * 180 / Math.PI).toFixed(2)));
  assert.equal(await page.locator("#control-wall").inputValue(), "11");
  assert.match(await page.locator("#command").innerText(), /--set 'tube.wall=11 mm'/);
  assert.match(await page.locator("#cell-mass .change").innerText(), /^\+\d/);
  await move(page, "wall", 12);
  await settled(page);
  const more = printed("flex", MODEL, "--case", "rated-load", "--set", "tube.wall=12 mm");
  assert.equal(plain(await value(page, "camber")), Number((more.cases[0].wheels.left.camber_rad * 180 / Math.PI).toFixed(2)));
  const [download] = await Promise.all([page.waitForEvent("download"), page.locator("#download").click()]);
  assert.match(readFileSync(await download.path(), "utf8"), /^wall = "12 mm"/m);
  await page.locator("#reset").click();
  await page.waitForFunction(() => document.querySelector("#control-wall").value === "9");
  assert.deepEqual(wrong, []);
  await context.close();
});

test("a case sheet is filled in and its causes are those of the command line", async () => {
  const { page, wrong, context } = await visit(browser, server.address);
  await settled(page);
  await page.locator("#case summary").click();
  const fill = (name, text) => page.locator(`#seen-${name}`).fill(text);
  await fill("left-inner-depths", "7 7.5 8 8.5 8.5");
  await fill("left-outer-depths", "9 9 9 9.5 9.5");
  await fill("left-inner-inflation", "450");
  await fill("left-inner-cups", "0");
  await page.locator("#seen-damper").selectOption("good");
  await page.locator("#explain").click();
  await page.waitForSelector("#causes table", { timeout: 60000 });
  const folder = mkdtempSync(join(tmpdir(), "case-"));
  const tire = (place, more) => `[[tire]]\nside = "left"\nplace = "${place}"\n${more}\n`;
  writeFileSync(join(folder, "case.toml"), `name = "x"\naxle = ${JSON.stringify(join(root, MODEL))}\ndamper = "good"\n${
    tire("outer", 'depths = ["9 mm", "9 mm", "9 mm", "9.5 mm", "9.5 mm"]')}${
    tire("inner", 'depths = ["7 mm", "7.5 mm", "8 mm", "8.5 mm", "8.5 mm"]\ncups = 0\ninflation = "450 kPa"')}`);
  const own = printed("explain", join(folder, "case.toml"));
  rmSync(folder, { recursive: true });
  const shares = (await page.locator("#causes td.number").allInnerTexts()).map(Number);
  assert.equal(shares[0], Math.round(100 * own.causes[0].posterior));
  assert.equal(await page.locator("#case-answer").innerText(), own.answer.join(" "));
  await shot(page, "case", { fullPage: true });
  await fill("left-inner-depths", "7 seven <b>");
  await page.locator("#explain").click();
  await page.waitForFunction(() => document.querySelector("#causes").hidden);
  assert.match(await page.locator("#case-answer").innerText(), /seven/);
  assert.deepEqual(await barriers(page), []);
  assert.deepEqual(wrong.filter(words => !words.includes("422")), []);
  await context.close();
});

test("a file with a hostile name is saved beside itself, reloaded when it changes, and its problems told", async t => {
  const folder = mkdtempSync(join(tmpdir(), "page-"));
  const file = join(folder, "<img src=x onerror=alert(1)>=cmd().toml");
  const good = readFileSync(join(root, MODEL), "utf8").replace(/^name = .*$/m, 'name = "<script>alert(1)</script> =cmd()"');
  writeFileSync(file, good);
  const own = await serve(file);
  t.after(() => {
    own.end();
    rmSync(folder, { recursive: true });
  });
  const { page, wrong, context } = await visit(browser, own.address);
  page.on("dialog", () => wrong.push("a dialog opened"));
  await settled(page);
  assert.match(await page.locator("h1").innerText(), /<script>alert\(1\)<\/script>/);
  await move(page, "wall", 10);
  await settled(page);
  await page.locator("#write").click();
  await page.waitForFunction(() => document.querySelector("#saved").textContent.startsWith("Saved as"));
  const saved = readdirSync(folder).filter(name => name.endsWith("-changed.toml"));
  assert.equal(saved.length, 1);
  copyFileSync(join(folder, saved[0]), join(folder, "saved.toml"));
  const flex = printed("flex", join(folder, "saved.toml"), "--case", "rated-load");
  assert.equal(plain(await value(page, "camber")), Number((flex.cases[0].wheels.left.camber_rad * 180 / Math.PI).toFixed(2)));
  const [download] = await Promise.all([page.waitForEvent("download"), page.locator("#download").click()]);
  assert.match(download.suggestedFilename(), /changed\.toml$/);
  writeFileSync(file, good.replace('wall = "9 mm"', 'wal = "13 mm"').replace("=cmd()", "\\u001b[31m<b>"));
  await page.locator("#reload").click();
  await page.waitForSelector("#problems");
  assert.equal(await page.locator("#problems b").count(), 0);
  assert.match(await page.locator("#problems").innerText(), /line \d+: .*did you mean .wall.\?/s);
  assert.ok(await page.locator("#sheet .steel").count() > 0, "the last good picture stays");
  writeFileSync(file, good.replace('wall = "9 mm"', 'wall = "13 mm"'));
  await page.locator("#reload").click();
  await page.waitForFunction(() => document.querySelector("#control-wall").value === "13");
  assert.deepEqual(wrong.filter(words => !words.includes("422")), []);
  await context.close();
});

test("prices say what the changes bring", async t => {
  const own = await serve(MODEL, "--prices", "studies/trailer-angle-pays.toml");
  t.after(own.end);
  const { page, wrong, context } = await visit(browser, own.address);
  await settled(page);
  await move(page, "stiffener-size", "L75x75x8");
  await settled(page);
  assert.match(await value(page, "money"), /USD/);
  assert.deepEqual(wrong, []);
  await context.close();
});

for (const [name, options] of [
  ["desktop-light", {}], ["desktop-dark", { colorScheme: "dark" }], ["phone", { viewport: { width: 390, height: 844 }, hasTouch: true }],
  ["phone-dark", { viewport: { width: 360, height: 740 }, colorScheme: "dark" }], ["tablet", { viewport: { width: 820, height: 1100 } }],
]) {
  test(`${name}: nobody is kept out, nothing is cut off`, async () => {
    const { page, wrong, context } = await visit(browser, server.address, options);
    await settled(page);
    await move(page, "wall", 12);
    await move(page, "stiffener-size", "L75x75x8");
    await settled(page);
    assert.deepEqual(await barriers(page), []);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
    assert.ok(wide <= 0, `${wide} pixels too wide`);
    const cut = await page.evaluate(() => {
      const cutOff = svg => {
        const frame = svg.getBoundingClientRect();
        return [...svg.querySelectorAll("text")].filter(own => own.textContent).filter(own => {
          const box = own.getBoundingClientRect();
          return box.left < frame.left - 1 || box.right > frame.right + 1 || box.top < frame.top - 1 || box.bottom > frame.bottom + 1;
        }).map(own => own.textContent);
      };
      return [...document.querySelectorAll("svg")].flatMap(cutOff);
    });
    assert.deepEqual(cut, []);
    const spilled = await page.evaluate(() => [...document.querySelectorAll("#strip .value")].filter(own => own.scrollWidth > own.clientWidth)
      .map(own => own.textContent));
    assert.deepEqual(spilled, []);
    const overlaps = await page.evaluate(() => {
      const texts = [...document.querySelectorAll("#sheet text")].filter(own => own.textContent);
      const boxes = texts.map(own => ({ words: own.textContent, box: own.getBoundingClientRect() }));
      const meet = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 2 && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 4;
      return boxes.flatMap((a, i) => boxes.slice(i + 1).filter(b => meet(a.box, b.box)).map(b => `${a.words} / ${b.words}`));
    });
    assert.deepEqual(overlaps, []);
    await shot(page, name);
    await shot(page, `${name}-whole`, { fullPage: true });
    assert.deepEqual(wrong, []);
    await context.close();
  });
}

test("on paper there are figures, drawing and values, and no buttons", async () => {
  const { page, context } = await visit(browser, server.address, { viewport: { width: 760, height: 1000 }, colorScheme: "dark" });
  await settled(page);
  await page.emulateMedia({ media: "print" });
  assert.equal(await page.locator("#pin").isVisible(), false);
  assert.equal(await page.locator("#sheet").isVisible(), true);
  assert.equal(await page.evaluate(() => window.getComputedStyle(document.body).backgroundColor), "rgb(255, 255, 255)");
  await shot(page, "print", { fullPage: true });
  await context.close();
});
