// Rules drawn as a stave is: five lines under the title of a page, one between its parts.
import './stave.css';

export function Stave({ single = false }: { single?: boolean }) {
  return <hr className={single ? 'stave single' : 'stave'} />;
}
