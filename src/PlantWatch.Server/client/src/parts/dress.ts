import rest from '../styles/rest.css?url';

let dressed: Promise<void> | null = null;

/** Brings the styles of what is not drawn at once. By hand: the bundler asks for a style that failed to load never again, and a chart without it falls apart. */
export function dress(): Promise<void> {
  dressed ??= new Promise<void>((done, failed) => {
    const link = document.createElement('link');
    link.rel = 'stylesheet';
    link.href = rest;
    link.onload = () => done();
    link.onerror = () => { link.remove(); dressed = null; failed(new Error('styles')); };
    document.head.append(link);
  });
  return dressed;
}
