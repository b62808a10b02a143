/** The one catalogue of what can go wrong for a user: status, what happened, what to do next. Codes are API. */
export const PROBLEMS = {
  bad_input: {
    status: 400,
    title: 'Something in the request is not right.',
    next: 'Mend what is named below and send it again.',
  },
  sign_in_first: { status: 401, title: 'You are not signed in.', next: 'Sign in and try again.' },
  wrong_sign_in: {
    status: 401,
    title: 'The name and password do not match.',
    next: 'Check both; a manager can set a new password.',
  },
  not_your_role: {
    status: 403,
    title: 'Your role may not do this.',
    next: 'Ask someone who holds the role named below.',
  },
  foreign_origin: {
    status: 403,
    title: 'The request came from another site.',
    next: 'Open Tackleroom itself and do it there.',
  },
  wrong_setup_code: {
    status: 403,
    title: 'The setup code is not right.',
    next: 'Read it again where the server was started.',
  },
  not_found: {
    status: 404,
    title: 'There is nothing here.',
    next: 'Check the address, or look it up in the register.',
  },
  already_set_up: {
    status: 409,
    title: 'Tackleroom has its first account already.',
    next: 'Sign in with it.',
  },
  sign_in_name_taken: { status: 409, title: 'That sign-in name is taken.', next: 'Choose another.' },
  last_manager: {
    status: 409,
    title: 'This is the last manager.',
    next: 'Make someone else a manager first.',
  },
  store_name_taken: {
    status: 409,
    title: 'There is a store of that name.',
    next: 'Use it, or choose another name.',
  },
  tag_taken: {
    status: 409,
    title: 'That tag is on another item.',
    next: 'Check the item, or give it the next free tag.',
  },
  serial_taken: {
    status: 409,
    title: 'That maker and serial number are in the register already.',
    next: 'Look at the item named below: it may be this one.',
  },
  serial_looks_alike: {
    status: 409,
    title: 'A serial number of this maker looks almost the same.',
    next: 'Read the plate again. If they really are two items, say so and save again.',
  },
  reference_taken: {
    status: 409,
    title: 'There is a job with that number.',
    next: 'Open it, or choose another number.',
  },
  not_allowed_now: {
    status: 409,
    title: 'That cannot be done as things stand.',
    next: 'See the reason below.',
  },
  item_not_fit: {
    status: 409,
    title: 'The item is not fit for this duty on these days.',
    next: 'Take the one proposed instead, or cure what is named below.',
  },
  not_on_booking: {
    status: 409,
    title: 'The item is not on this booking.',
    next: 'Put it back and take one that is on the list, or swap it as offered.',
  },
  item_taken: {
    status: 409,
    title: 'The item was promised to another job a moment ago.',
    next: 'Look at the new proposal.',
  },
  nothing_to_reserve: {
    status: 409,
    title: 'There is nothing new to reserve.',
    next: 'See the shortfalls and what would cure them.',
  },
  overdue_unheard: {
    status: 409,
    title: 'Nobody would hear of overdue gear.',
    next: 'Let someone else choose that mail first, then make your change again.',
  },
  changed_meanwhile: {
    status: 412,
    title: 'Someone else changed this meanwhile.',
    next: 'Look at it as it is now and make your change again.',
  },
  file_too_large: { status: 413, title: 'The file is too large.', next: 'Split it and hand over the parts.' },
  unreadable_file: {
    status: 422,
    title: 'The file cannot be read as a table.',
    next: 'Save it as CSV or XLSX and hand it over again.',
  },
  document_too_large: {
    status: 413,
    title: 'The file is too large.',
    next: 'Send a smaller photo, or scan the certificate at a lower resolution.',
  },
  wrong_file_type: {
    status: 415,
    title: 'A file of this type is not kept.',
    next: 'Send photos as JPEG, PNG or WebP, and certificates as PDF, JPEG or PNG.',
  },
  key_used_otherwise: {
    status: 422,
    title: 'That Idempotency-Key came with another request before.',
    next: 'Use a fresh key for a fresh request.',
  },
  already_done: {
    status: 409,
    title: 'This was done by the same request before.',
    next: 'Look at it as it is now.',
  },
  say_which_version: {
    status: 428,
    title: 'The request does not say which version it changes.',
    next: 'Send the ETag you read as If-Match.',
  },
  internal: {
    status: 500,
    title: 'Tackleroom made a mistake.',
    next: 'Nothing was half-written. Try again, and report it if it stays.',
  },
} as const satisfies Record<string, { status: number; title: string; next: string }>;

export type ProblemCode = keyof typeof PROBLEMS;

/** One thing wrong inside a request: where, and what to do about it. */
export interface FieldError {
  /** The field as the request names it, such as `panels[2].heightMm`. */
  readonly field: string;
  readonly message: string;
}

/** Thrown by services for what the user can do something about. The filter in `web/` turns it into a page or problem details. */
export class Problem extends Error {
  constructor(
    readonly code: ProblemCode,
    /** What happened this time, in one sentence. */
    detail: string,
    /** Fields concerned, and further members for the API such as refusals. */
    readonly more: {
      readonly errors?: readonly FieldError[];
      readonly members?: Readonly<Record<string, unknown>>;
    } = {},
  ) {
    super(detail);
  }
}
