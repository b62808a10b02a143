import { join } from 'node:path';
import { Global, Module } from '@nestjs/common';
import { packageRoot } from '../package-root.js';
import { Catalogue } from './catalogue.js';
import { loadCatalogue } from './load-catalogue.js';

/** Gives the `Catalogue`, loaded once at start from the package's `config/`; a wrong file stops the server. */
@Global()
@Module({
  providers: [{ provide: Catalogue, useFactory: () => loadCatalogue(join(packageRoot(), 'config')) }],
  exports: [Catalogue],
})
export class CatalogueModule {}
