/**
 * Two things the build adds around the app: the security headers (as dist/_headers for static hosts, and as a meta element for
 * hosts that send no headers), and the example's section as a static picture in index.html.
 */
import type { Plugin } from 'vite';
import { headersFile, metaContentSecurityPolicy } from './security-headers.mjs';
import { drawExampleSection } from './static-section.ts';

const policySlot = '<!--content-security-policy-->';
const sectionSlot = '<!--example-section-->';

export function pageShell(): Plugin {
  return {
    name: 'shearsight-page-shell',
    apply: 'build',
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: '_headers', source: headersFile() });
    },
    transformIndexHtml: {
      order: 'post',
      async handler(html) {
        const policy = `<meta http-equiv="Content-Security-Policy" content="${metaContentSecurityPolicy}" />`;
        return fill(fill(html, policySlot, policy), sectionSlot, await drawExampleSection());
      },
    },
  };
}

function fill(html: string, slot: string, content: string): string {
  const parts = html.split(slot);
  if (parts.length !== 2)
    throw new Error(`index.html has ${String(parts.length - 1)} places for ${slot}, not one.`);
  return parts.join(content);
}
