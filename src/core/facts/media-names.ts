// What files are called that a fact can show or let hear. What they are is settled by what is in them.

const PICTURE = /\.(png|jpe?g|webp|gif|svg|avif)$/i;
const SOUND = /\.(ogg|oga|opus|weba|webm|mp3|m4a|wav|flac)$/i;

/** Whether a file is called like a sound. */
export const isSoundName = (name: string): boolean => SOUND.test(name);

/** Whether a file is called like a picture or a sound. */
export const isMediaName = (name: string): boolean => PICTURE.test(name) || isSoundName(name);
