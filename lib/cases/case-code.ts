import type { Catalogue } from '../catalogue';
import { appliesTo } from '../faults/apply-cause';

/** A cause and its severity in thousandths. */
export interface ChosenCause {
  cause: string;
  severity: number;
}

/**
 * What a case is drawn from. Without `chosen` the generator draws the cause; with it, an instructor has chosen one, or two.
 */
export interface CaseSpec {
  /** Rig id. */
  rig: string;
  /** Six symbols of the code alphabet. */
  seed: string;
  /** The hardest level: two independent causes may be drawn. */
  hardest?: true;
  chosen?: ChosenCause;
  /** A second cause beside the chosen one. */
  also?: ChosenCause;
}

/** Whether two things may be wrong at once, which whoever works the case is told. */
export function mayBeTwo({ hardest, also }: Pick<CaseSpec, 'hardest' | 'also'>): boolean {
  return hardest === true || also !== undefined;
}

export type CaseCodeError = 'malformed' | 'check-symbols' | 'unknown-rig' | 'unknown-cause';

/** Crockford's base 32: no I, L, O, U. @source D. Crockford, Base 32 Encoding (from memory). */
const ALPHABET = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';
const SEED_SYMBOLS = 6;
const CHOSEN_SYMBOLS = 4;
const CHECK_SYMBOLS = 2;
/** Stands after the seed of a case drawn at the hardest level. */
const HARDEST = 'H';
const CHECK_MODULUS = 1021;

/**
 * A case's code, such as `T4K-Q72M-9X`: one symbol for the rig, six for the seed, one more at the hardest level or four for
 * each chosen cause, two that check the rest. It can be typed in anywhere to get the same case.
 */
export function formatCaseCode({ rig, seed, hardest, chosen, also }: CaseSpec): string {
  const causes = [chosen, also].map((cause) => (cause ? formatChosen(seed, cause) : ''));
  const body = toSymbols(fingerprint(rig, 32), 1) + seed + (hardest ? HARDEST : '') + causes.join('');
  return grouped(body + checkSymbols(body));
}

/** Reads a code however it was typed: any case, with or without hyphens and spaces, O for 0 and I or L for 1. */
export function parseCaseCode(text: string, catalogue: Catalogue): { spec: CaseSpec } | { error: CaseCodeError } {
  const symbols = text.toUpperCase().replace(/[\s-]/g, '').replace(/O/g, '0').replace(/[IL]/g, '1');
  const tail = symbols.length - (1 + SEED_SYMBOLS + CHECK_SYMBOLS);
  if (![...symbols].every((symbol) => ALPHABET.includes(symbol))) return { error: 'malformed' };
  if (![0, HARDEST.length, CHOSEN_SYMBOLS, 2 * CHOSEN_SYMBOLS].includes(tail)) return { error: 'malformed' };
  const body = symbols.slice(0, -CHECK_SYMBOLS);
  if (checkSymbols(body) !== symbols.slice(-CHECK_SYMBOLS)) return { error: 'check-symbols' };
  return readBody(body, catalogue);
}

function readBody(body: string, catalogue: Catalogue): { spec: CaseSpec } | { error: CaseCodeError } {
  const rig = [...catalogue.rigs.keys()].find((id) => toSymbols(fingerprint(id, 32), 1) === body[0]);
  if (!rig) return { error: 'unknown-rig' };
  const seed = body.slice(1, 1 + SEED_SYMBOLS);
  const rest = body.slice(1 + SEED_SYMBOLS);
  if (rest === '') return { spec: { rig, seed } };
  if (rest.length === HARDEST.length)
    return rest === HARDEST ? { spec: { rig, seed, hardest: true } } : { error: 'malformed' };
  const chosen = readChosen(rest.slice(0, CHOSEN_SYMBOLS), seed, catalogue);
  const second = rest.slice(CHOSEN_SYMBOLS);
  const also = second === '' ? undefined : readChosen(second, seed, catalogue);
  if (!chosen || (second !== '' && !also)) return { error: 'unknown-cause' };
  if (![chosen, also].every((choice) => !choice || befalls(rig, choice.cause, catalogue)))
    return { error: 'unknown-cause' };
  return { spec: { rig, seed, chosen, ...(also && { also }) } };
}

/** The seed that any word gives, such as `alder-17`. */
export function seedFromWord(word: string): string {
  return toSymbols(fingerprint(word, 2 ** 30), SEED_SYMBOLS);
}

/** A seed from random bytes that the caller brings: four suffice. */
export function seedFromBytes(bytes: Uint8Array): string {
  const number = bytes.reduce((sum, byte) => (sum * 256 + byte) % 2 ** 40, 0);
  return toSymbols(number % 2 ** 30, SEED_SYMBOLS);
}

/** Ids whose fingerprints collide, so that codes could not tell them apart; content must have none. */
export function codeCollisions(catalogue: Catalogue): string[] {
  return [...collisions([...catalogue.rigs.keys()], 32), ...collisions([...catalogue.causes.keys()], 1024)];
}

function collisions(ids: string[], below: number): string[] {
  return ids.filter((id) => ids.some((other) => other < id && fingerprint(other, below) === fingerprint(id, below)));
}

/** Cause and severity, masked by the seed so that the same choice does not look the same in two codes. */
function formatChosen(seed: string, { cause, severity }: ChosenCause): string {
  const number = fingerprint(cause, 1024) * 1024 + severity;
  return toSymbols((number + mask(seed)) % 2 ** 20, CHOSEN_SYMBOLS);
}

/** Whether a rig has the parts that a cause breaks. */
function befalls(rigId: string, causeId: string, { rigs, causes }: Catalogue): boolean {
  const [rig, cause] = [rigs.get(rigId), causes.get(causeId)];
  return rig !== undefined && cause !== undefined && appliesTo(rig, cause);
}

function readChosen(symbols: string, seed: string, { causes }: Catalogue) {
  const number = (fromSymbols(symbols) - mask(seed) + 2 ** 20) % 2 ** 20;
  const severity = number % 1024;
  const cause = [...causes.keys()].find((id) => fingerprint(id, 1024) === Math.floor(number / 1024));
  return cause && severity <= 1000 ? { cause, severity } : undefined;
}

function mask(seed: string): number {
  return fingerprint(`chosen ${seed}`, 2 ** 20);
}

function checkSymbols(body: string): string {
  const sum = [...body].reduce((total, symbol) => (total * 37 + ALPHABET.indexOf(symbol) + 1) % CHECK_MODULUS, 0);
  return toSymbols(sum, CHECK_SYMBOLS);
}

function grouped(symbols: string): string {
  const body = symbols.slice(0, -CHECK_SYMBOLS);
  const groups = [body.slice(0, 3), ...(body.slice(3).match(/.{1,4}/g) ?? [])];
  return [...groups, symbols.slice(-CHECK_SYMBOLS)].join('-');
}

function toSymbols(value: number, count: number): string {
  let left = value;
  let symbols = '';
  for (let i = 0; i < count; i++) {
    symbols = ALPHABET.charAt(left % 32) + symbols;
    left = Math.floor(left / 32);
  }
  return symbols;
}

function fromSymbols(symbols: string): number {
  return [...symbols].reduce((sum, symbol) => sum * 32 + ALPHABET.indexOf(symbol), 0);
}

/** FNV-1a, 32 bits, with a final avalanche. @source Fowler, Noll & Vo; finaliser of MurmurHash3 (both from memory). */
function fingerprint(text: string, below: number): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i++) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return ((hash ^ (hash >>> 16)) >>> 0) % below;
}
