/** Writes the policy into the built page, before anything that it is about. `npm run dev` goes without: the builder's own client brings styles along. */
import type { Plugin } from 'vite';

const CHARSET = /<meta charset="[^"]*"\s*\/?>/;

/** The page with the policy as its second line. */
export function withPolicy(html: string, policy: string): string {
  if (!CHARSET.test(html)) throw new Error('index.html says nothing of its charset, after which the policy goes');
  return html.replace(
    CHARSET,
    (tag) => `${tag}\n    <meta http-equiv="Content-Security-Policy" content="${policy}" />`,
  );
}

export function contentPolicy(policy: string): Plugin {
  return {
    name: 'content-policy',
    apply: 'build',
    transformIndexHtml: { order: 'post', handler: (html) => withPolicy(html, policy) },
  };
}
