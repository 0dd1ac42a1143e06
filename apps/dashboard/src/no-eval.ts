// Our content security policy lets no text become code. The schema library tries to, and does without where it may not;
// told so before it is loaded, it does not try, and no browser has a violation to report.
Object.assign(globalThis, { __zod_globalConfig: { jitless: true } });
