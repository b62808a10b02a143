import { Inject, Module, type DynamicModule, type OnApplicationShutdown } from '@nestjs/common';
import { SETTINGS, type Settings } from '../settings.js';
import { openStorage, type Schema, type Storage } from './open-storage.js';
import { OneAtATime } from './one-at-a-time.js';
import { Reads } from './reads.js';
import { UnitOfWork } from './unit-of-work.js';

const STORAGE = Symbol('storage');

/** Gives every module `Reads`, and the few that may write without the ledger `UnitOfWork`. */
@Module({})
export class StorageModule implements OnApplicationShutdown {
  constructor(@Inject(STORAGE) private readonly storage: Storage) {}

  static forSchema(schema: Schema): DynamicModule {
    return {
      module: StorageModule,
      global: true,
      providers: [
        {
          provide: STORAGE,
          inject: [SETTINGS],
          useFactory: (settings: Settings) => openStorage(settings, schema),
        },
        { provide: UnitOfWork, inject: [STORAGE], useFactory: (storage: Storage) => storage.unitOfWork },
        { provide: OneAtATime, inject: [STORAGE], useFactory: (storage: Storage) => storage.oneAtATime },
        { provide: Reads, inject: [STORAGE], useFactory: (storage: Storage) => storage.reads },
      ],
      exports: [UnitOfWork, Reads, OneAtATime],
    };
  }

  /** After the last request has been answered. */
  async onApplicationShutdown(): Promise<void> {
    await this.storage.close();
  }
}
