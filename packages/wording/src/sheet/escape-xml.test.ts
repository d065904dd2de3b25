import { expect, test } from 'vitest';
import { escapeXml } from './escape-xml.ts';

test('markup in a file name stays text', () => {
  expect(escapeXml(`<script>alert("1 & 2")</script>'`)).toBe(
    '&lt;script&gt;alert(&quot;1 &amp; 2&quot;)&lt;/script&gt;&#39;',
  );
});

test('characters that XML bars become the replacement character', () => {
  expect(escapeXml('a\u0000b\u001bc\td\uffffe')).toBe('a\ufffdb\ufffdc\td\ufffde');
});
