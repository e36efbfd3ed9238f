/** The words of a header in the few words that its meaning is told by, whatever their language, case and order. */
export function plainWords(header: string): readonly string[] {
  return foldedText(header)
    .split(' ')
    .filter((word) => word !== '' && !FILLERS.has(word))
    .map(
      (word) =>
        PLAIN.get(word) ??
        PLAIN.get(word.replace(/s$/, '')) ??
        PLAIN.get(word.replace(/es$/, '')) ??
        word,
    );
}

/** The text in small letters without accents and punctuation; joined words such as `leanGap` come apart. */
export function foldedText(text: string): string {
  let folded = text
    .replace(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replace(/n[º°]|№|#/gi, ' no ')
    .replace(/[øØ⌀]/g, ' dia ')
    .replace(/ß/g, 'ss')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
  for (const [phrase, word] of JOINED) folded = folded.replace(phrase, word);
  return folded;
}

const JOINED: readonly (readonly [RegExp, string])[] = [
  [/\b(?:out of|off) plumb\b/g, 'lean'],
  [/\bstraight ?edge\b/g, 'level'],
  [/\bspirit level\b/g, 'level'],
  [/\b(?:push|pull|shake|wiggle|rocking) test\b/g, 'rock test'],
  [/\ba lo largo\b/g, 'along'],
  [/\bprueba de (?:empuje|movimiento)\b/g, 'rock test'],
  [/\bruttel ?probe\b/g, 'rock test'],
  [/\b(?:lot)?abweichung(?: vom lot)?\b/g, 'lean'],
  [/\bpfosten ?(nr|nummer|no)\b/g, 'post number'],
  [/\bloch ?(nr|nummer|no)\b/g, 'hole number'],
  [/\b(?:loch|bohr)durchmesser\b/g, 'hole dia'],
  [/\blochtiefe\b/g, 'hole depth'],
  [/\bsolltiefe\b/g, 'wanted depth'],
  [/\bisttiefe\b/g, 'reached depth'],
  [/\bfundament ?(breite|durchmesser)\b/g, 'footing width'],
  [/\bfundamenttiefe\b/g, 'footing depth'],
  [/\bzaunhohe\b/g, 'fence height'],
  [/\bpfostenhohe\b/g, 'post height'],
  [/\bpfosten(typ|art)\b/g, 'post type'],
  [/\bpfosten(grosse|querschnitt)\b/g, 'post size'],
  [/\bprobentiefe\b|\bstichtiefe\b|\bfaultiefe\b/g, 'probe depth'],
  [/\bwasserstand\b/g, 'standing water'],
];

const FILLERS = new Set(
  'the a an of at on from is and or vs as by in reading readings measured value amount used found old existing c del de la el en y der die das des am im von und zum zur'.split(
    ' ',
  ),
);

// One plain word, then the words of crews and yards that mean it: English, German, Spanish.
const MEANINGS = [
  'post pst pole pfosten pfahl poste',
  'number no nr num nbr nummer numero id',
  'hole loch bohrloch hoyo agujero pozo',
  'station sta stn chainage stationierung estacion progresiva',
  'distance dist entfernung abstand distancia',
  'type typ kind tipo',
  'size section dimension grosse querschnitt tamano seccion',
  'nominal nom',
  'height ht hgt hohe hoehe altura alto',
  'fence zaun cerca valla cerco',
  'lean leaning tilt plumb plumbness lot neigung schiefstand desplome desaplome inclinacion',
  'gap spalt abertura separacion',
  'along lengthwise inline langs longitudinal',
  'across crosswise quer transversal',
  'level lvl wasserwaage richtscheit richtlatte nivel regla',
  'length len lange laenge largo longitud',
  'over uber ueber sobre',
  'toward towards to direction dir way richtung nach hacia direccion sentido rumbo',
  'probe probed prod screwdriver awl sonde sondierung stich sondeo sonda punzon',
  'rot rotten decay faulnis pudricion',
  'soft weich blando',
  'soundness sound condition zustand festigkeit estado sanidad',
  'rock movement wackeln',
  'test tested probetest prueba',
  'collar kragen betonkragen collarin',
  'footing footer ftg fundament cimiento cimentacion zapata',
  'dia diam diameter diametre durchmesser diametro',
  'width wide breite weite ancho anchura',
  'depth deep dp tiefe profundidad prof',
  'break broke broken snap snapped bruch bruchstelle rotura quiebre',
  'reached got actual achieved erreicht ist alcanzada alcanzado lograda',
  'wanted design required target planned needed soll geplant deseada requerida prevista',
  'stop stopped hit obstruction refusal gestoppt detenido parado obstaculo',
  'top oberkante tope',
  'above',
  'below under unter bajo',
  'line string schnur linea cuerda',
  'grade ground gelande boden suelo terreno',
  'shift shifted moved verschiebung desplazamiento',
  'heave heaved hebung',
  'drop fall gefalle absenkung desnivel caida',
  'last previous prev letzten vorigen anterior ultimo',
  'water wasser agua',
  'standing ponding ponded stehendes stehend estancada encharcada',
  'note comment remark bemerkung bemerkungen notiz notizen anmerkung nota observacion observaciones comentario comentarios',
  'gravel kies schotter grava',
  'tree trunk baum stamm arbol tronco',
  'concrete conc beton hormigon concreto',
  'embedment embedded einbindetiefe empotramiento',
  'wood holz madera',
];
const PLAIN: ReadonlyMap<string, string> = new Map(
  MEANINGS.flatMap((line) => {
    const [plain = '', ...others] = line.split(' ');
    return [plain, ...others].map((word) => [word, plain] as const);
  }),
);
