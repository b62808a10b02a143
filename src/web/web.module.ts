import { Module } from '@nestjs/common';
import { APP_INTERCEPTOR } from '@nestjs/core';
import { JobsModule } from '../jobs/jobs.module.js';
import { NoticesModule } from '../notices/notices.module.js';
import { PreferencesModule } from '../reminders/preferences/preferences.module.js';
import { StoresModule } from '../stores/stores.module.js';
import { HealthController } from './health.controller.js';
import { HomePages } from './home.pages.js';
import { PhonePageModule } from './phone/phone-page.module.js';
import { OnceOnlyInterceptor } from './once-only.interceptor.js';

@Module({
  imports: [JobsModule, NoticesModule, PreferencesModule, StoresModule, PhonePageModule],
  controllers: [HealthController, HomePages],
  providers: [{ provide: APP_INTERCEPTOR, useClass: OnceOnlyInterceptor }],
})
export class WebModule {}
