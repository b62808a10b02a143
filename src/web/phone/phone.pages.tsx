import { Controller, Get, Param, Res } from '@nestjs/common';
import type { FastifyReply } from 'fastify';
import { createHash } from 'node:crypto';
import { Problem } from '../../problem.js';
import { Public, SignedIn } from '../../people/access.js';
import { phonePage } from './phone.view.js';
import { IMPORT_MAP, ShellFiles } from './shell-files.js';

/** What an installed page is called and looks like (W3C Web Application Manifest). */
const MANIFEST = JSON.stringify({
  name: 'Tackleroom: check gear before use',
  short_name: 'Gear check',
  id: '/phone',
  start_url: '/phone',
  scope: '/phone',
  display: 'standalone',
  background_color: '#f4efe3',
  theme_color: '#1c2833',
  icons: [{ src: '/assets/peg.svg', type: 'image/svg+xml', sizes: 'any', purpose: 'any' }],
});

/**
 * Like the policy of every page, and as little more as can be: the import map by its hash, the decoder's WebAssembly,
 * the worker, the manifest, and pictures that the page itself has made.
 */
const CONTENT_POLICY = [
  "default-src 'none'",
  "style-src 'self'",
  `script-src 'self' 'wasm-unsafe-eval' 'sha256-${createHash('sha256').update(IMPORT_MAP).digest('base64')}'`,
  "worker-src 'self'",
  "manifest-src 'self'",
  "img-src 'self' blob:",
  "connect-src 'self'",
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
].join(';');

/** A build changes the files at once: a browser asks each time, and the service worker keeps them for offline. */
const ASK_EACH_TIME = 'no-cache';

@Controller('phone')
export class PhonePages {
  constructor(private readonly files: ShellFiles) {}

  @SignedIn()
  @Get()
  async show(@Res() reply: FastifyReply): Promise<void> {
    await reply
      .header('content-security-policy', CONTENT_POLICY)
      .header('cache-control', ASK_EACH_TIME)
      .type('text/html; charset=utf-8')
      .send(phonePage(IMPORT_MAP));
  }

  @Public()
  @Get('manifest.webmanifest')
  async manifest(@Res() reply: FastifyReply): Promise<void> {
    await reply.header('cache-control', ASK_EACH_TIME).type('application/manifest+json').send(MANIFEST);
  }

  @Public()
  @Get('sw.js')
  async serviceWorker(@Res() reply: FastifyReply): Promise<void> {
    await reply
      .header('service-worker-allowed', '/phone')
      .header('cache-control', ASK_EACH_TIME)
      .type('text/javascript; charset=utf-8')
      .send(this.files.serviceWorker());
  }

  @Public()
  @Get('app/*')
  async file(@Param('*') path: string, @Res() reply: FastifyReply): Promise<void> {
    const file = this.files.at(path);
    if (!file) throw new Problem('not_found', 'There is no such file.');
    await reply.header('cache-control', ASK_EACH_TIME).type(file.mediaType).send(file.bytes);
  }
}
