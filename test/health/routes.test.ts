import 'reflect-metadata';
import { PATH_METADATA } from '@nestjs/common/constants.js';
import { DiscoveryModule, DiscoveryService, MetadataScanner, NestFactory } from '@nestjs/core';
import { Module } from '@nestjs/common';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { AppModule } from '../../src/app.module.js';
import { ACCESS } from '../../src/people/access.js';
import { freshDatabase } from '../support/engines.js';

describe('every route', () => {
  let routes: { name: string; access: unknown }[];
  let close: () => Promise<void>;

  beforeAll(async () => {
    const { settings, remove } = await freshDatabase('sqlite');
    class Walk {}
    Module({ imports: [AppModule.forSettings(settings), DiscoveryModule] })(Walk);
    const app = await NestFactory.createApplicationContext(Walk, { logger: false });
    routes = app
      .get(DiscoveryService)
      .getControllers()
      .flatMap(({ metatype }) =>
        metatype ? handlersOf(metatype as { name: string; prototype: object }) : [],
      );
    close = async () => {
      await app.close();
      await remove();
    };
  });
  afterAll(() => close());

  it('says who may use it', () => {
    expect(routes.length).toBeGreaterThan(40);
    expect(routes.filter(({ access }) => access === undefined).map(({ name }) => name)).toEqual([]);
  });

  it('is open to everyone only where one signs in or the server says that it lives', () => {
    const open = routes.filter(({ access }) => access === 'public').map(({ name }) => name);
    expect(open.sort()).toEqual([
      // Calendar programs cannot sign in: a secret address opens it.
      'FeedController.read',
      'HealthController.check',
      'PeopleController.createFirst',
      'PeopleController.signIn',
      'PeoplePages.createFirst',
      'PeoplePages.firstRun',
      'PeoplePages.signIn',
      'PeoplePages.signInForm',
      'PhonePages.file',
      'PhonePages.manifest',
      'PhonePages.serviceWorker',
    ]);
  });
});

function handlersOf(controller: { name: string; prototype: object }): { name: string; access: unknown }[] {
  return new MetadataScanner().getAllMethodNames(controller.prototype).flatMap((method) => {
    const handler: unknown = Reflect.get(controller.prototype, method);
    if (typeof handler !== 'function' || !Reflect.hasMetadata(PATH_METADATA, handler)) return [];
    const access: unknown = Reflect.getMetadata(ACCESS, handler) ?? Reflect.getMetadata(ACCESS, controller);
    return [{ name: `${controller.name}.${method}`, access }];
  });
}
