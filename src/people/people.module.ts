import { Module } from '@nestjs/common';
import { APP_GUARD } from '@nestjs/core';
import { AccessGuard } from './access.guard.js';
import { DemoAccounts } from './demo-accounts.js';
import { PeopleController } from './people.controller.js';
import { PeoplePages } from './people.pages.js';
import { PeopleService } from './people.service.js';
import { SessionsService } from './sessions.service.js';
import { SetupCode } from './setup-code.js';

@Module({
  controllers: [PeopleController, PeoplePages],
  providers: [
    PeopleService,
    SessionsService,
    SetupCode,
    DemoAccounts,
    { provide: APP_GUARD, useClass: AccessGuard },
  ],
  exports: [PeopleService, SetupCode],
})
export class PeopleModule {}
