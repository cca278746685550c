/** Each file of tests begins with modules that no other file has used, in a process that several files share. */
import { vi } from 'vitest';

vi.resetModules();
