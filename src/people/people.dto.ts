import { ArrayNotEmpty, IsBoolean, IsIn, IsString, Length, Matches } from 'class-validator';
import { MayBeLeftOut } from '../http/may-be-left-out.js';
import { PlainText } from '../http/plain-text.js';
import { ROLES, type Role } from './role.js';

const SIGN_IN_NAME = {
  message: 'write 2 to 60 letters, digits, dots, dashes, underscores or an @, without spaces',
};
const PASSWORD = { message: 'write at least 12 characters and at most 200; several words make a good one' };

/** The first account, made with the setup code that the server printed. */
export class FirstAccountDto {
  @IsString()
  @Length(1, 40, { message: 'write the setup code that the server printed' })
  setupCode!: string;

  @PlainText({ most: 120, what: 'your name' })
  name!: string;

  @IsString()
  @Matches(/^[\w.@-]{2,60}$/, SIGN_IN_NAME)
  signInName!: string;

  @IsString()
  @Length(12, 200, PASSWORD)
  password!: string;
}

/** A new account. */
export class NewPersonDto {
  @PlainText({ most: 120, what: 'the name of the person' })
  name!: string;

  @IsString()
  @Matches(/^[\w.@-]{2,60}$/, SIGN_IN_NAME)
  signInName!: string;

  @IsString()
  @Length(12, 200, PASSWORD)
  password!: string;

  @ArrayNotEmpty({ message: 'choose at least one role' })
  @IsIn(ROLES, { each: true, message: `choose from ${ROLES.join(', ')}` })
  roles!: Role[];
}

/** What a manager changes of an account. What is left out stays as it is. */
export class ChangePersonDto {
  @MayBeLeftOut()
  @ArrayNotEmpty({ message: 'choose at least one role' })
  @IsIn(ROLES, { each: true, message: `choose from ${ROLES.join(', ')}` })
  roles?: Role[];

  @MayBeLeftOut()
  @IsBoolean()
  active?: boolean;

  @MayBeLeftOut()
  @IsString()
  @Length(12, 200, PASSWORD)
  password?: string;
}

/** A sign-in. */
export class SignInDto {
  @IsString()
  @Length(1, 60, { message: 'write your sign-in name' })
  signInName!: string;

  @IsString()
  @Length(1, 200, { message: 'write your password' })
  password!: string;
}

/** An account as others see it. */
export class PersonView {
  id!: number;
  name!: string;
  signInName!: string;
  roles!: Role[];
  active!: boolean;
}
