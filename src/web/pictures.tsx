import { useEffect, useRef, useState } from 'preact/hooks';
import type { QuestionInput } from '../plan/index.ts';
import { picturePath } from './service.ts';
import { usePictures } from './use-pictures.ts';
import { words } from './words/words.ts';

interface Props {
  readonly question: QuestionInput;
  /** Which of the ways of the plan; 0 is the recommended one. */
  readonly way: number;
}

/** A plan drawn before and afterwards: spring, bike and fork, each picture by itself. Drawn when it comes near. */
export function Pictures({ question, way }: Props) {
  const { pictures: say } = words;
  const place = useRef<HTMLElement>(null);
  const near = useNear(place);
  const drawn = usePictures(near ? picturePath(question, way) : null);
  return (
    <section class="pictures" id="pictures" aria-labelledby="pictures-title" ref={place}>
      <h2 id="pictures-title">{say.title}</h2>
      {drawn.kind === 'here' ? (
        <>
          <ul>
            {drawn.panels.map(({ id, width, height, title, description }) => (
              <li key={id}>
                <a href={`${drawn.path}#${id}`}>
                  <img
                    src={`${drawn.path}#${id}`}
                    width={width}
                    height={height}
                    // of the view, not of the whole sheet that the address stands for
                    style={{ aspectRatio: `${width} / ${height}` }}
                    alt={`${title}. ${description}`}
                  />
                </a>
              </li>
            ))}
          </ul>
          <p class="quiet">{say.note}</p>
        </>
      ) : (
        <p class="quiet">{drawn.kind === 'trouble' ? say.trouble : words.waiting}</p>
      )}
    </section>
  );
}

/** Whether an element has come near to what is seen. */
function useNear(place: { readonly current: HTMLElement | null }): boolean {
  const [near, setNear] = useState(false);
  useEffect(() => {
    const seen = new IntersectionObserver(
      (entries) => {
        if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
        setNear(true);
        seen.disconnect();
      },
      { rootMargin: '400px' },
    );
    if (place.current) seen.observe(place.current);
    return () => seen.disconnect();
  }, [place]);
  return near;
}
