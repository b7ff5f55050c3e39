// Opens every page of a folder in headless Chromium, as on a phone, on a screen and on paper, light
// and dark, and tells what a reader would stumble over, one JSON object a line.
//
//   node look.mjs FOLDER [PICTURES]
//
// LOOK_MODULES names the folder that holds node_modules with puppeteer-core and axe-core;
// LOOK_CHROMIUM the browser. With PICTURES, every page is also kept there as a PNG.
import { createRequire } from 'node:module';
import { readFileSync, readdirSync, mkdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const [folder, pictures] = process.argv.slice(2).map((path) => resolve(path));
const require = createRequire(join(resolve(process.env.LOOK_MODULES ?? '.'), 'package.json'));
const puppeteer = require('puppeteer-core');
const axe = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
if (pictures) mkdirSync(pictures, { recursive: true });

// A4 less its margins is 194 mm: 733 of the browser's pixels.
const VIEWS = [
  { name: 'phone', width: 360, height: 780, scheme: 'light' },
  { name: 'phone-dark', width: 360, height: 780, scheme: 'dark' },
  { name: 'screen', width: 1280, height: 900, scheme: 'light' },
  { name: 'screen-dark', width: 1280, height: 900, scheme: 'dark' },
  { name: 'paper', width: 733, height: 1062, scheme: 'light', media: 'print' },
  { name: 'paper-of-a-dark-screen', width: 733, height: 1062, scheme: 'dark', media: 'print' },
];

// Runs in the page: what is cut, what lies over other words, what is too faint, what can't be
// reached with the keyboard in the order in which it is read.
function stumbles(media) {
  const found = [];
  const tell = (kind, text) => found.push({ kind, text: text.trim().slice(0, 90) });
  const wide = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth > wide + 1) tell('wider-than-the-page', `${document.documentElement.scrollWidth} px`);

  const colours = document.createElement('canvas').getContext('2d', { willReadFrequently: true });
  const rgba = (colour) => {
    colours.clearRect(0, 0, 1, 1);
    colours.fillStyle = colour;
    colours.fillRect(0, 0, 1, 1);
    return [...colours.getImageData(0, 0, 1, 1).data];
  };
  // Source: W3C Web Content Accessibility Guidelines 2.2, "relative luminance", "contrast ratio".
  const light = (colour) => rgba(colour).slice(0, 3)
    .map((part) => part / 255)
    .map((part) => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4))
    .reduce((sum, part, at) => sum + part * [0.2126, 0.7152, 0.0722][at], 0);
  const ground = (element) => {
    for (let own = element; own; own = own.parentElement) {
      const colour = getComputedStyle(own).backgroundColor;
      if (rgba(colour)[3] > 0) return colour;
    }
    return '#ffffff';
  };

  const boxes = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (walker.nextNode()) {
    const node = walker.currentNode;
    const holder = node.parentElement;
    if (!node.textContent.trim() || holder.closest('title, desc, style, script')) continue;
    const style = getComputedStyle(holder);
    if (style.visibility === 'hidden' || style.display === 'none') continue;
    // Words for those who hear a page are clipped away on purpose.
    if (style.clipPath !== 'none') continue;
    const range = document.createRange();
    range.selectNodeContents(node);
    const rects = [...range.getClientRects()].filter((rect) => rect.width > 0.5 && rect.height > 0.5);
    const skipped = holder.closest('.skip') && document.activeElement !== holder;
    if (!rects.length || skipped) continue;
    const drawing = holder.closest('svg');
    const moved = media !== 'print' && holder.closest('.wide');
    const ink = drawing ? style.fill : style.color;
    const [one, other] = [light(ink), light(ground(drawing ?? holder))];
    const ratio = (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
    if (ratio < 4.5) tell('too-faint', `${ratio.toFixed(2)}: ${node.textContent}`);
    for (const rect of rects) {
      if (!moved && (rect.left < -1 || rect.right > wide + 1)) tell('cut', node.textContent);
      if (drawing) {
        const paper = drawing.getBoundingClientRect();
        const out = rect.left < paper.left - 1 || rect.right > paper.right + 1
          || rect.top < paper.top - 2 || rect.bottom > paper.bottom + 2;
        if (out) tell('cut-by-the-drawing', node.textContent);
      }
      // Lines of words may touch: only the middle part of their height is ink.
      const thin = rect.height * 0.24;
      boxes.push({ left: rect.left + 0.5, right: rect.right - 0.5, top: rect.top + thin, bottom: rect.bottom - thin, node });
    }
    for (let own = holder; own && own !== document.body; own = own.parentElement) {
      const around = getComputedStyle(own);
      const hides = ['hidden', 'clip'].includes(around.overflowX) || around.textOverflow === 'ellipsis';
      if (hides && !(own instanceof SVGElement) && own.scrollWidth > own.clientWidth + 1) tell('cut', node.textContent);
    }
  }
  boxes.sort((one, other) => one.top - other.top);
  for (let at = 0; at < boxes.length; at += 1) {
    const one = boxes[at];
    for (let next = at + 1; next < boxes.length && boxes[next].top < one.bottom; next += 1) {
      const other = boxes[next];
      if (other.node === one.node) continue;
      if (other.left < one.right && one.left < other.right) {
        tell('overlapping', `${one.node.textContent.trim()} / ${other.node.textContent.trim()}`);
      }
    }
  }
  const reached = [...document.querySelectorAll('a[href], [tabindex]')];
  reached.filter((own) => own.tabIndex > 0).forEach((own) => tell('keyboard-order', own.outerHTML));
  document.querySelectorAll('.wide').forEach((own) => {
    if (own.scrollWidth > own.clientWidth && own.tabIndex !== 0) tell('not-reached', own.className);
  });
  document.querySelectorAll('svg').forEach((own) => {
    const named = (own.getAttribute('aria-labelledby') ?? '').split(' ');
    if (!named.every((id) => document.getElementById(id)?.textContent.trim())) tell('drawing-without-words', own.outerHTML);
  });
  document.querySelectorAll('table').forEach((own) => {
    const headed = own.querySelector('thead th[scope=col]') && own.caption?.textContent.trim();
    if (!headed) tell('table-without-headers', own.textContent);
  });
  return found;
}

const browser = await puppeteer.launch({
  executablePath: process.env.LOOK_CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage', '--allow-file-access-from-files'],
});
let looked = 0;
for (const file of readdirSync(folder).filter((name) => name.endsWith('.html')).sort()) {
  for (const view of VIEWS) {
    const page = await browser.newPage();
    const say = (kind, text) => console.log(JSON.stringify({ page: file, view: view.name, kind, text }));
    const url = pathToFileURL(join(folder, file)).href;
    page.on('console', (message) => {
      if (['error', 'warn', 'warning'].includes(message.type())) say('console', message.text());
    });
    page.on('pageerror', (error) => say('console', String(error)));
    page.on('dialog', async (dialog) => { say('dialog', dialog.message()); await dialog.dismiss(); });
    page.on('request', (request) => { if (request.url() !== url) say('request', request.url().slice(0, 90)); });
    await page.setViewport({ width: view.width, height: view.height });
    await page.emulateMediaFeatures([{ name: 'prefers-color-scheme', value: view.scheme }]);
    if (view.media) await page.emulateMediaType(view.media);
    await page.goto(url, { waitUntil: 'load' });
    for (const own of await page.evaluate(stumbles, view.media ?? 'screen')) say(own.kind, own.text);
    if (!view.media) {
      await page.evaluate(axe);
      const { violations } = await page.evaluate('axe.run(document, { resultTypes: ["violations"] })');
      for (const own of violations) say(`axe-${own.id}`, own.nodes.map((node) => node.html).join(' ').slice(0, 200));
    }
    if (pictures) await page.screenshot({ path: join(pictures, `${file}-${view.name}.png`), fullPage: true });
    await page.close();
    looked += 1;
  }
}
await browser.close();
console.error(`looked ${looked} times`);
