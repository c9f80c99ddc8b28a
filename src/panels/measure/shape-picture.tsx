/** The small pictures people choose from: ends of pins, what rides on the key, where the key sits. */
import './shape-picture.css';

export type PictureName =
  | 'top domed'
  | 'top broken edge'
  | 'top sharp edge'
  | 'driver broken edge'
  | 'driver sharp edge'
  | 'driver rounded edge'
  | 'foot ball'
  | 'foot pointed'
  | 'foot rounded'
  | 'key level'
  | 'key above'
  | 'key unknown'
  | 'round plug'
  | 'round sleeve'
  | 'end broken edge'
  | 'end sharp edge'
  | 'end domed';

const PINS: Readonly<Partial<Record<PictureName, string>>> = {
  'top domed': 'M14 40V19Q28 5 42 19V40',
  'top broken edge': 'M14 40V18l5-5H37l5 5V40',
  'top sharp edge': 'M14 40V13H42V40',
  'driver broken edge': 'M14 0V22l5 5H37l5-5V0',
  'driver sharp edge': 'M14 0V27H42V0',
  'driver rounded edge': 'M14 0V19q0 8 8 8H34q8 0 8-8V0',
  'end broken edge': 'M14 26V16l4-4H38l4 4V26l-4 4H18Z',
  'end sharp edge': 'M14 30V12H42V30Z',
  'end domed': 'M14 30V17Q28 5 42 17V30Z',
  'foot pointed': 'M18 0V12L26 24h4l8-12V0',
  'foot rounded': 'M18 0V14a10 10 0 0 0 20 0V0',
};

export function ShapePicture({ name }: { readonly name: PictureName }) {
  return (
    <svg className="shape-picture" viewBox="0 0 56 40" aria-hidden="true">
      <Shape name={name} />
    </svg>
  );
}

function Shape({ name }: { readonly name: PictureName }) {
  const pin = PINS[name];
  if (name.startsWith('round')) return <Rounds hasSleeve={name === 'round sleeve'} />;
  if (name.startsWith('key')) return <KeyInPlug name={name} />;
  const isFoot = name.startsWith('foot');
  return (
    <>
      {isFoot ? <path className="picture-key" d="M0 14H8L23 29H33L48 14H56V40H0Z" /> : null}
      {name === 'foot ball' ? (
        <>
          <path className="picture-pin" d="M18 0V8l4 4H34l4-4V0" />
          <circle className="picture-steel" cx="28" cy="18.5" r="9.5" />
        </>
      ) : null}
      {pin === undefined ? null : (
        <path className={name.startsWith('driver') ? 'picture-steel' : 'picture-pin'} d={pin} />
      )}
    </>
  );
}

/** Shell, sleeve or not, plug, from the front. */
function Rounds({ hasSleeve }: { readonly hasSleeve: boolean }) {
  return (
    <>
      <path className="picture-steel" d="M20 2H36V8A17.5 17.5 0 1 1 20 8Z" />
      {hasSleeve ? <circle className="picture-sleeve" cx="28" cy="23.5" r="13.5" /> : null}
      <circle className="picture-plug" cx="28" cy="23.5" r={hasSleeve ? 8.5 : 11.5} />
      <path className="picture-hollow" d="M26.5 20V31H29.5V20Z" />
    </>
  );
}

/** The plug from the front, its slot open at the bottom or not, and the key in it. */
function KeyInPlug({ name }: { readonly name: PictureName }) {
  const bottom = name === 'key level' ? 37 : 31;
  return (
    <>
      <circle className="picture-plug" cx="28" cy="20" r="17.5" />
      {name === 'key unknown' ? (
        <text className="picture-word" x="28" y="28">
          ?
        </text>
      ) : (
        <>
          <path className="picture-hollow" d={`M25 12V${bottom}H31V12Z`} />
          <path className="picture-key" d={`M25.5 16V${bottom}H30.5V16Z`} />
          <path className="picture-mark" d={`M18 ${bottom}H38`} />
        </>
      )}
    </>
  );
}
