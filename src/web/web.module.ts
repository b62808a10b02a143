import { Module } from '@nestjs/common';
import { APP_INTERCEPTOR } from '@nestjs/core';
import { JobsModule } from '../jobs/jobs.module.js';
import { StoresModule } from '../stores/stores.module.js';
import { HealthController } from './health.controller.js';
import { HomePages } from './home.pages.js';
import { OnceOnlyInterceptor } from './once-only.interceptor.js';

@Module({
  imports: [JobsModule, StoresModule],
  controllers: [HealthController, HomePages],
  providers: [{ provide: APP_INTERCEPTOR, useClass: OnceOnlyInterceptor }],
})
export class WebModule {}
