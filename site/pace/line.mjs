// A slow line in front of a server, as a small proxy: what a browser emulates by
// itself does not reach everything that a page starts.

import net from "node:net";

/** So much goes out at a time, so that no connection holds up the others. */
const PIECE = 4096;

/** The profile "slow 4G" as commonly emulated: 1.6 Mbit/s down, 150 ms there and back. */
export const SLOW_4G = { bitsPerSecond: 1.6e6, roundTripMs: 150 };

/** Gives {origin, stop}. All connections share the rate downwards; a new one takes
 *  one round trip more, as TCP's handshake does. */
export async function slowLine(origin, { bitsPerSecond, roundTripMs }) {
  const target = new URL(origin);
  const waiting = [];
  let busy = false;
  let due = 0;

  function pump() {
    const next = waiting.shift();
    if (!next) {
      busy = false;
      return;
    }
    // By a clock of its own, so that timers that come late do not slow the line.
    if (!busy) due = performance.now();
    busy = true;
    const piece = next.data.subarray(0, PIECE);
    const rest = next.data.subarray(PIECE);
    if (rest.length) waiting.push({ ...next, data: rest });
    due += (piece.length * 8000) / bitsPerSecond;
    setTimeout(() => {
      setTimeout(() => next.to.writable && next.to.write(piece), roundTripMs / 2);
      pump();
    }, due - performance.now());
  }

  const server = net.createServer((near) => {
    const opened = performance.now();
    const far = net.connect({ host: target.hostname, port: Number(target.port) });
    for (const socket of [near, far])
      socket.on("error", () => {
        near.destroy();
        far.destroy();
      });
    near.on("data", (data) => {
      const late = Math.max(0, opened + roundTripMs - performance.now()) + roundTripMs / 2;
      setTimeout(() => far.writable && far.write(data), late);
    });
    far.on("data", (data) => {
      const same = waiting.find((w) => w.to === near);
      if (same) same.data = Buffer.concat([same.data, data]);
      else waiting.push({ to: near, data });
      if (!busy) pump();
    });
    near.on("close", () => far.destroy());
    far.on("close", () => setTimeout(() => near.end(), 2 * roundTripMs));
  });
  await new Promise((listening) => server.listen(0, "127.0.0.1", listening));
  return { origin: `http://127.0.0.1:${server.address().port}`, stop: () => server.close() };
}
