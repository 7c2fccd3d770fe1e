// The bridge: the real core behind a loopback address, for the browser and for making a story's world.
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import { program } from './place.mjs';

/** Starts a bridge on a folder and waits for its address. */
export async function startBridge(folder) {
  const child = spawn(program('carryover-bridge'), [folder], { stdio: ['pipe', 'pipe', 'inherit'] });
  const ended = new Promise((resolve) => child.once('exit', resolve));
  const failed = new Promise((_, reject) => {
    child.once('error', reject);
    child.once('exit', (code) => reject(new Error(`the bridge ended with ${code}`)));
  });
  failed.catch(() => {});
  const lines = createInterface({ input: child.stdout });
  const address = await Promise.race([new Promise((resolve) => lines.once('line', resolve)), failed]);
  const page = await (await fetch(address)).text();
  const token = /name="carryover-bridge" content="([^"]+)"/.exec(page)[1];
  return {
    address,
    folder,
    /** Runs a command and gives its value. A refusal throws with its words and fields. */
    async act(name, input = {}) {
      const response = await fetch(new URL('/call', address), {
        method: 'POST',
        headers: { 'content-type': 'application/json', 'x-carryover-token': token },
        body: JSON.stringify({ name, input }),
      });
      const answer = await response.json();
      if (answer.error) throw new Error(`${name}: ${JSON.stringify(answer.error)}`);
      return answer.value;
    },
    /** Ends it, and waits until the file it held is free. */
    async stop() {
      child.stdin.end();
      await ended;
    },
  };
}

/** Makes a coach file in a folder and fills it: `setup` is given `act(name, input)`. Gives its path. */
export async function makeFile(folder, setup = async () => {}, name = 'Story') {
  const bridge = await startBridge(folder);
  try {
    const { path } = await bridge.act('desk.create', { name });
    await setup(bridge.act);
    return path;
  } finally {
    await bridge.stop();
  }
}
