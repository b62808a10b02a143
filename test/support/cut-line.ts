import { once } from 'node:events';
import { connect, createServer, type Socket } from 'node:net';

/** A line to a server that breaks wherever it is told to. */
export interface CutLine {
  readonly address: string;
  /**
   * From now on each request whose first line matches is cut off once: the first after as many bytes as the first
   * number says, and so on. A cut `up` loses what the client sends, one `down` what the server answers.
   */
  cut(matching: RegExp, cuts: readonly Cut[]): void;
  /** How many of the cuts are still to come. */
  readonly cutsLeft: number;
  close(): Promise<void>;
}

export interface Cut {
  readonly way: 'up' | 'down';
  readonly afterBytes: number;
}

/** Lays a line of plain bytes to the server at `target`; it knows nothing of HTTP but the first line of a request. */
export async function layCutLine(target: string): Promise<CutLine> {
  const { hostname, port } = new URL(target);
  const open = new Set<Socket>();
  let matching = /^$/;
  let cuts: Cut[] = [];
  const line = createServer((client) => {
    const server = connect(Number(port), hostname);
    const end = () => {
      client.destroy();
      server.destroy();
    };
    let [cut, left]: [Cut | undefined, number] = [undefined, Infinity];
    const pass = (way: Cut['way'], to: Socket) => (bytes: Buffer) => {
      if (way === 'up' && !cut && matching.test(bytes.toString('latin1').split('\r\n', 1)[0] ?? '')) {
        cut = cuts.shift();
        left = cut?.afterBytes ?? Infinity;
      }
      const through = cut?.way === way ? bytes.subarray(0, left) : bytes;
      if (cut?.way === way) left -= through.length;
      to.write(through, () => through.length < bytes.length && end());
    };
    for (const socket of [client, server]) {
      open.add(socket);
      socket.on('error', end).on('close', () => {
        open.delete(socket);
        end();
      });
    }
    client.on('data', pass('up', server));
    server.on('data', pass('down', client));
  });
  line.listen(0, '127.0.0.1');
  await once(line, 'listening');
  const bound = line.address();
  if (bound === null || typeof bound === 'string') throw new Error('The line has no port.');
  return {
    address: `http://127.0.0.1:${bound.port}`,
    cut: (request, wanted) => void ([matching, cuts] = [request, [...wanted]]),
    get cutsLeft() {
      return cuts.length;
    },
    async close() {
      line.close();
      for (const socket of open) socket.destroy();
      await once(line, 'close');
    },
  };
}
