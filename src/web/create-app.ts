import fastifyCookie from '@fastify/cookie';
import fastifyHelmet from '@fastify/helmet';
import fastifyMultipart from '@fastify/multipart';
import fastifyStatic from '@fastify/static';
import { NestFactory } from '@nestjs/core';
import { FastifyAdapter, type NestFastifyApplication } from '@nestjs/platform-fastify';
import { join } from 'node:path';
import { AppModule } from '../app.module.js';
import { InputPipe } from '../http/input.pipe.js';
import { refuseUnsafeInput } from '../http/unsafe-input.js';
import type { Settings } from '../settings.js';
import { serveApiDescription } from './api-description.js';
import { ProblemFilter } from './problem.filter.js';
import { refuseForeignOrigin } from './same-origin.js';

const MIB = 1024 * 1024;

/** The largest file that is taken for import, in bytes: some 50,000 rows. */
export const LARGEST_FILE_BYTES = 8 * MIB;

/** The whole server, ready to listen: the same for `npm start`, the demo and the tests. */
export async function createApp(
  settings: Settings,
  options: { quiet?: boolean } = {},
): Promise<NestFastifyApplication> {
  const adapter = new FastifyAdapter({ bodyLimit: MIB });
  const app = await NestFactory.create<NestFastifyApplication>(AppModule.forSettings(settings), adapter, {
    logger: false, // what goes wrong while starting is thrown, and said once by the caller
    abortOnError: false,
  });
  app.useLogger(options.quiet ? false : ['error', 'warn']);
  await app.register(fastifyCookie);
  await app.register(fastifyMultipart, {
    limits: { fileSize: LARGEST_FILE_BYTES, files: 1, fields: 40, parts: 41 },
  });
  await app.register(fastifyHelmet, {
    contentSecurityPolicy: { useDefaults: false, directives: CONTENT_POLICY },
  });
  await app.register(fastifyStatic, {
    root: join(import.meta.dirname, 'assets'),
    prefix: '/assets/',
    maxAge: '1h',
  });
  app
    .getHttpAdapter()
    .getInstance()
    .addHook('onRequest', async (request) => refuseForeignOrigin(request))
    .addHook('preValidation', async (request) => refuseUnsafeInput(request));
  app.useGlobalPipes(new InputPipe());
  app.useGlobalFilters(new ProblemFilter());
  app.enableShutdownHooks();
  serveApiDescription(app);
  return app;
}

/** Everything comes from Tackleroom itself; nothing else may frame it. */
const CONTENT_POLICY = {
  defaultSrc: ["'none'"],
  styleSrc: ["'self'"],
  scriptSrc: ["'self'"],
  imgSrc: ["'self'", 'data:'],
  fontSrc: ["'self'"],
  connectSrc: ["'self'"],
  frameSrc: ["'self'"], // a mail in the outbox
  formAction: ["'self'"],
  baseUri: ["'none'"],
  frameAncestors: ["'none'"],
};
