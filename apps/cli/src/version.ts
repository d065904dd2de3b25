export { VERSION } from 'pourproof';
