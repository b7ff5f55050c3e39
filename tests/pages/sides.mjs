// Prints every page of a folder on A4 in headless Chromium and tells how many sides of paper each
// takes, a line each: its name, then the number.
//
//   node sides.mjs FOLDER
//
// LOOK_MODULES names the folder that holds node_modules with puppeteer-core; LOOK_CHROMIUM the
// browser.
import { createRequire } from 'node:module';
import { readdirSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const folder = resolve(process.argv[2]);
const require = createRequire(join(resolve(process.env.LOOK_MODULES ?? '.'), 'package.json'));
const puppeteer = require('puppeteer-core');

const browser = await puppeteer.launch({
  executablePath: process.env.LOOK_CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-dev-shm-usage', '--allow-file-access-from-files'],
});
for (const file of readdirSync(folder).filter((name) => name.endsWith('.html')).sort()) {
  const page = await browser.newPage();
  await page.goto(pathToFileURL(join(folder, file)).href, { waitUntil: 'load' });
  const printed = Buffer.from(await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  console.log(`${file} ${printed.match(/\/Type\s*\/Page\b(?!s)/g)?.length ?? 0}`);
  await page.close();
}
await browser.close();
