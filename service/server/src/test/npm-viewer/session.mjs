// SPDX-License-Identifier: Apache-2.0
// One sitting at the viewer: it is served, a browser opened, something done, and everything is closed again. What was
// found is printed as one JSON document, with every answer that the service gave to the viewer on the way.
import { serveViewer } from './serve.mjs';
import { Viewer } from './viewer.mjs';

/**
 * @param {string} service its address
 * @param {string} pictures folder for screenshots
 * @param {(viewer: Viewer) => Promise<object>} work
 */
export async function session(service, pictures, work) {
  const answers = [];
  const server = await serveViewer({
    service: new URL(service),
    port: 0,
    answered: ({ method, url, status }) => answers.push(`${status} ${method} ${url}`),
  });
  let viewer;
  try {
    viewer = await Viewer.open(`http://127.0.0.1:${server.address().port}/`, pictures);
    const found = await work(viewer).catch(async (problem) => {
      await viewer.picture('failed');
      throw problem;
    });
    const { elsewhere, exceptions } = viewer;
    process.stdout.write(JSON.stringify({ ...found, answers, elsewhere, exceptions }));
  } finally {
    await viewer?.close();
    server.close();
    server.closeAllConnections();
  }
}
