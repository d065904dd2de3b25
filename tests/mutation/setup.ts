import fc from 'fast-check';

// a mutant is caught by any case that fails: the smallest one is not looked for
fc.configureGlobal({ ...fc.readConfigureGlobal(), endOnFailure: true });
