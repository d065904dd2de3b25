import { config } from 'zod/mini';

// zod would try whether it may make functions of text, which the page's policy refuses and reports
config({ jitless: true });
