// SPDX-License-Identifier: Apache-2.0
// Brings the viewer that package.json names from npm and unpacks it into this folder, once. Its package is taken alone,
// built as it is: what it was built from is named in it as dependencies, not needed, and not all published.
import { createHash } from 'node:crypto';
import { execFileSync } from 'node:child_process';
import fs from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const here = path.dirname(fileURLToPath(import.meta.url));
const { viewer } = JSON.parse(fs.readFileSync(path.join(here, 'package.json'), 'utf8'));
const target = path.join(here, 'ohif-app');
const mark = path.join(target, 'sha256');

if (!fs.existsSync(mark) || fs.readFileSync(mark, 'utf8') !== viewer.sha256) {
  const packed = fs.mkdtempSync(path.join(os.tmpdir(), 'viewer-'));
  const unpacked = fs.mkdtempSync(path.join(here, 'ohif-app-'));
  try {
    const options = { cwd: packed, encoding: 'utf8', stdio: ['ignore', 'pipe', 'inherit'] };
    const name = execFileSync('npm', ['pack', '--loglevel=error', viewer.package], options).trim().split('\n').pop();
    const file = path.join(packed, name);
    const sha256 = createHash('sha256').update(fs.readFileSync(file)).digest('hex');
    if (sha256 !== viewer.sha256) {
      throw new Error(`${viewer.package} is not what was tested: its sha256 is ${sha256}`);
    }
    execFileSync('tar', ['xzf', file, '-C', unpacked, '--strip-components=1', 'package/dist', 'package/LICENSE']);
    fs.writeFileSync(path.join(unpacked, 'sha256'), viewer.sha256);
    fs.rmSync(target, { recursive: true, force: true });
    fs.renameSync(unpacked, target);
  } finally {
    fs.rmSync(packed, { recursive: true, force: true });
    fs.rmSync(unpacked, { recursive: true, force: true });
  }
}
