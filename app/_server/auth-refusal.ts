import { APIError } from 'better-auth/api';

/** Whether better-auth said no to what it was asked, rather than breaking. */
export function isAuthRefusal(error: unknown): boolean {
  return error instanceof APIError && Number(error.statusCode) < 500;
}
