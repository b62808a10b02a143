import { Module, type DynamicModule } from '@nestjs/common';
import { CatalogueModule } from './catalogue/catalogue.module.js';
import { ChecksModule } from './checks/checks.module.js';
import { NoticesModule } from './notices/notices.module.js';
import { CalculationModule } from './jobs/calculation/calculation.module.js';
import { JobsPagesModule } from './jobs/jobs-pages.module.js';
import { JobsModule } from './jobs/jobs.module.js';
import { DocumentsModule } from './documents/documents.module.js';
import { LabelsModule } from './labels/labels.module.js';
import { DemoModule } from './demo/demo.module.js';
import { LedgerModule } from './ledger/ledger.module.js';
import { PeopleModule } from './people/people.module.js';
import { WhatIfModule } from './planner/what-if/what-if.module.js';
import { RemindersModule } from './reminders/reminders.module.js';
import { RulesPageModule } from './rules-page/rules-page.module.js';
import { InspectionsModule } from './inspections/inspections.module.js';
import { ExportModule } from './register/export/export.module.js';
import { ImportModule } from './register/import/import.module.js';
import { RegisterModule } from './register/register.module.js';
import { SCHEMA } from './schema.js';
import { SETTINGS, type Settings } from './settings.js';
import { StoresModule } from './stores/stores.module.js';
import { StoresPagesModule } from './stores/stores-pages.module.js';
import { StorageModule } from './storage/storage.module.js';
import { TraceModule } from './trace/trace.module.js';
import { WebModule } from './web/web.module.js';

/** The table of contents: every part of Tackleroom. */
@Module({})
export class AppModule {
  static forSettings(settings: Settings): DynamicModule {
    return {
      module: AppModule,
      imports: [
        {
          module: SettingsModule,
          global: true,
          providers: [{ provide: SETTINGS, useValue: settings }],
          exports: [SETTINGS],
        },
        StorageModule.forSchema(SCHEMA),
        CatalogueModule,
        LedgerModule,
        CalculationModule,
        PeopleModule,
        StoresModule,
        RegisterModule,
        ImportModule,
        ExportModule,
        InspectionsModule,
        StoresPagesModule,
        RulesPageModule,
        ...(settings.demo ? [DemoModule] : []),
        JobsModule,
        JobsPagesModule,
        ChecksModule,
        NoticesModule,
        WhatIfModule,
        TraceModule,
        RemindersModule,
        DocumentsModule,
        LabelsModule,
        WebModule,
      ],
    };
  }
}

class SettingsModule {}
