import type { NestFastifyApplication } from '@nestjs/platform-fastify';
import { DocumentBuilder, SwaggerModule } from '@nestjs/swagger';
import { SESSION_COOKIE } from '../people/session-cookie.js';

/** Serves the OpenAPI description at `/api/openapi.json`. Its schemas come from the DTO classes at build time. */
export function serveApiDescription(app: NestFastifyApplication): void {
  const description = new DocumentBuilder()
    .setTitle('Tackleroom')
    .setDescription(
      'The register of gear, its fitness, and the planning and custody of jobs. A planning aid: it does not replace ' +
        "the maker's instructions, local law or a competent person. Errors are problem details (RFC 9457).",
    )
    .setVersion('1')
    .addCookieAuth(SESSION_COOKIE)
    .addSecurityRequirements('cookie')
    .build();
  SwaggerModule.setup('api', app, () => apiRoutesOnly(SwaggerModule.createDocument(app, description)), {
    swaggerUiEnabled: false,
    jsonDocumentUrl: 'api/openapi.json',
    raw: ['json'],
  });
}

/** Leaves out the pages: they are for people. */
function apiRoutesOnly<T extends { paths: Record<string, unknown> }>(document: T): T {
  const paths = Object.entries(document.paths).filter(
    ([path]) => path.startsWith('/api/') || path === '/health',
  );
  return { ...document, paths: Object.fromEntries(paths) };
}
