import { Module } from '@nestjs/common';
import { APP_INTERCEPTOR } from '@nestjs/core';
import { HealthController } from './health.controller.js';
import { OnceOnlyInterceptor } from './once-only.interceptor.js';

@Module({
  controllers: [HealthController],
  providers: [{ provide: APP_INTERCEPTOR, useClass: OnceOnlyInterceptor }],
})
export class WebModule {}
