import { useEffect, useState } from 'preact/hooks';

/** One panel of a picture: the view that shows it alone, its size, and its words. */
export interface Panel {
  readonly id: string;
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly description: string;
}
export type Drawn =
  | { readonly kind: 'waiting' }
  | { readonly kind: 'trouble' }
  | { readonly kind: 'here'; readonly path: string; readonly panels: readonly Panel[] };

/** Which panels the picture at an address has, read from the picture itself; null asks nothing. */
export function usePictures(path: string | null): Drawn {
  const [drawn, setDrawn] = useState<Drawn>({ kind: 'waiting' });
  useEffect(() => {
    if (path === null) return undefined;
    const gone = new AbortController();
    const keep = (next: Drawn): void => {
      if (!gone.signal.aborted) setDrawn(next);
    };
    fetch(path, { headers: { Accept: 'image/svg+xml' }, signal: gone.signal })
      .then(async (response) =>
        keep(response.ok ? { kind: 'here', path, panels: panelsIn(await response.text()) } : { kind: 'trouble' }),
      )
      .catch(() => keep({ kind: 'trouble' }));
    return () => gone.abort();
  }, [path]);
  return drawn;
}

function panelsIn(svg: string): readonly Panel[] {
  const picture = new DOMParser().parseFromString(svg, 'image/svg+xml');
  const textOf = (id: string): string => picture.getElementById(id)?.textContent ?? '';
  return [...picture.querySelectorAll('view')].map((view) => {
    const [, , width = 0, height = 0] = (view.getAttribute('viewBox') ?? '').split(' ').map(Number);
    const { id } = view;
    return { id, width, height, title: textOf(`${id}-title`), description: textOf(`${id}-desc`) };
  });
}
