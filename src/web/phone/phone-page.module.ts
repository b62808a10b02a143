import { Module } from '@nestjs/common';
import { PhonePersonController } from './phone-person.controller.js';
import { PhonePages } from './phone.pages.js';
import { ShellFiles } from './shell-files.js';

@Module({ controllers: [PhonePages, PhonePersonController], providers: [ShellFiles] })
export class PhonePageModule {}
