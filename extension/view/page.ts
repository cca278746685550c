/** The page of the view: nothing but its script and its style, under the strictest policy that shows it. */
import { l10n, Uri } from 'vscode';
import type { Webview, WebviewOptions, WebviewPanelOptions } from 'vscode';

/** The page may load from the built view alone, and run no commands. */
export function pageOptions(extensionUri: Uri): WebviewOptions & WebviewPanelOptions {
  return { enableScripts: true, enableCommandUris: false, enableFindWidget: true, localResourceRoots: [builtView(extensionUri)] };
}

export function pageHtml(webview: Webview, extensionUri: Uri): string {
  const nonce = randomNonce();
  const built = (file: string): string => webview.asWebviewUri(Uri.joinPath(builtView(extensionUri), file)).toString(true);
  const policy = [
    `default-src 'none'`,
    `script-src 'nonce-${nonce}'`,
    `style-src ${webview.cspSource}`,
    // What is saved as PNG is drawn on a canvas from an image of itself.
    `img-src ${webview.cspSource} data: blob:`,
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${attribute(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${attribute(l10n.t('Mechanism'))}</title>
<link rel="stylesheet" href="${attribute(built('view.css'))}">
</head>
<body>
<script nonce="${nonce}" src="${attribute(built('view.js'))}"></script>
</body>
</html>
`;
}

function builtView(extensionUri: Uri): Uri {
  return Uri.joinPath(extensionUri, 'build', 'webview');
}

/** 128 bits. */
function randomNonce(): string {
  return Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) => byte.toString(16).padStart(2, '0')).join('');
}

function attribute(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('"', '&quot;').replaceAll('<', '&lt;').replaceAll('>', '&gt;');
}
