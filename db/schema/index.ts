export { acts } from './acts';
export { attempts } from './attempts';
export { calls } from './calls';
