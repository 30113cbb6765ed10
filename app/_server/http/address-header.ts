/** Carries the address that a request came from, as our own server saw it; what a browser sends under this name is dropped. */
export const ADDRESS_HEADER = 'x-faultwright-address';
