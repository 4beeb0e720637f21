// What does the program bring along, and is anything known against it? `sbom` prints the packages that are shipped as CycloneDX; `advisories`
// asks the package registry. Both are npm's own, told for one purpose. Ends with 0: done, nothing known; 1: something is; 2: could not be asked.

import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '..', '..', '..');

/** Runs npm where the lock file lies. */
function npm(...args) {
  const all = [...args, '--package-lock-only', '--no-update-notifier'];
  const file = process.env.npm_execpath;
  const options = { cwd: root, encoding: 'utf8', maxBuffer: 64 * 1024 * 1024 };
  const { error, stdout, stderr } = file?.endsWith('.js')
    ? spawnSync(process.execPath, [file, ...all], options)
    : spawnSync('npm', all, options);
  return { stdout: stdout ?? '', why: error ? error.message : (stderr ?? '') };
}

function parse(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

function lastLine(text) {
  const lines = text
    .split('\n')
    .filter((line) => line.trim() !== '' && !line.includes('complete log of this run'));
  return lines[0] ?? 'no answer';
}

/** What is shipped, by the lock file: `name@version`. */
function shipped() {
  const { packages } = JSON.parse(readFileSync(path.join(root, 'package-lock.json'), 'utf8'));
  const here = Object.entries(packages).filter(([place, { dev }]) => place !== '' && !dev);
  return new Set(
    here.map(([place, { version }]) => `${place.slice(place.lastIndexOf('node_modules/') + 13)}@${version}`),
  );
}

/** npm is asked for all packages: asked to omit those for development, it leaves out what these share with what is shipped. */
function sbom() {
  const { stdout, why } = npm('sbom', '--sbom-format=cyclonedx', '--sbom-type=application');
  const bill = parse(stdout);
  if (!bill?.components) {
    console.error(`sbom: npm made no bill of materials: ${lastLine(why)}`);
    return 2;
  }
  const wanted = shipped();
  const nameOf = ({ name, version }) => `${name}@${version}`;
  const components = bill.components.filter((one) => wanted.has(nameOf(one)));
  const missing = [...wanted].filter((name) => !components.some((one) => nameOf(one) === name));
  if (missing.length > 0) {
    console.error(`sbom: npm does not tell of ${missing.join(', ')}`);
    return 2;
  }
  const own = bill.metadata.component['bom-ref'];
  const refs = new Set([own, ...components.map((one) => one['bom-ref'])]);
  const dependencies = bill.dependencies
    .filter(({ ref }) => refs.has(ref))
    .map(({ ref, dependsOn }) => ({ ref, dependsOn: dependsOn.filter((one) => refs.has(one)) }));
  // npm names it by the folder that it happens to lie in.
  bill.metadata.component.name = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8')).name;
  console.log(JSON.stringify({ ...bill, components, dependencies }, null, 2));
  return 0;
}

function advisories() {
  const { stdout, why } = npm('audit', '--json', '--omit=dev', '--audit-level=none');
  const report = parse(stdout);
  if (!report?.metadata?.vulnerabilities) {
    const said = report?.message ?? report?.error?.summary ?? lastLine(why);
    console.error(
      `advisories: the registry could not be asked (${said}): nothing is known for or against the packages.`,
    );
    console.error(
      'Ask again where it can be reached, or give the output of `sbom` to a scanner of your own.',
    );
    return 2;
  }
  const found = Object.values(report.vulnerabilities);
  for (const { name, severity, range, via } of found) {
    for (const { title, url } of via.filter((one) => typeof one === 'object'))
      console.log(`${name} ${range}: ${severity}: ${title} ${url}`);
  }
  const { total } = report.metadata.vulnerabilities;
  console.log(
    total === 0
      ? 'No advisory is known for the packages that are shipped.'
      : `${total} packages with advisories.`,
  );
  return total === 0 ? 0 : 1;
}

const acts = { sbom, advisories };
const act = acts[process.argv[2] ?? ''];
if (act) process.exitCode = act();
else {
  console.error('Usage: node supply.mjs sbom|advisories');
  process.exitCode = 2;
}
