/** The version of this command line; a test holds it to package.json. */
export const VERSION = '0.1.0';
