/** The docs of the findings as a module of the core: outputs tell them where no page of the docs can be reached. */
import { format, resolveConfig } from 'prettier';
import { root } from './setUp.mjs';

/**
 * @param {readonly import('./codePages.mjs').CodePage[]} findings
 * @param {string} path where the module will stand, from the project's root
 * @returns {Promise<string>} laid out as prettier does it
 */
export async function findingDocs(findings, path) {
  const docs = Object.fromEntries(findings.map(({ code, title, text, cure }) => [code, { title, text, cure }]));
  const source = `/** Generated from the doc comments of src/findings/rules. Do not edit. */
    import type { CodeDoc } from './codeDoc.ts';

    export const FINDING_DOCS: Readonly<Record<string, CodeDoc>> = ${JSON.stringify(docs)};
    `;
  return format(source, { ...(await resolveConfig(root + path)), filepath: root + path });
}
