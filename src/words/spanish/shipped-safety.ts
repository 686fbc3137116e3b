import type { Wording } from '../worded.ts';

/** Safety pages. */
export const shippedSafety: Readonly<Record<string, Wording>> = {
  'Wood and finish dust': 'Polvo de madera y de acabado',
  'Extraction on, dust mask on; sweep nothing dry.': 'Aspiración en marcha, mascarilla puesta; nada de barrer en seco.',
  'Fine dust harms the lungs, and that of several hardwoods the nose for good.':
    'El polvo fino daña los pulmones, y el de varias maderas duras, la nariz para siempre.',
  'Take it away where it is made, wear a mask that fits, and vacuum with a fine filter instead of sweeping or blowing.':
    'Retírelo donde se produce, lleve una mascarilla que ajuste, y aspire con filtro fino en vez de barrer o soplar.',
  'A cloud of fine dust, and lacquer dust more so, burns fast.':
    'Una nube de polvo fino, y más de polvo de laca, arde deprisa.',
  'Empty the bag, keep sparks away.': 'Vacíe la bolsa, lejos de chispas.',
  'Recommended limit for wood dust in the air, 1 mg/m3; legal US limits for dust not otherwise named are 15 mg/m3 in total and 5 mg/m3 of the fine part.':
    'Límite recomendado de polvo de madera en el aire, 1 mg/m3; los límites legales de EE. UU. para polvo sin otro nombre son 15 mg/m3 en total y 5 mg/m3 de la parte fina.',
  'Vapour burns': 'El vapor arde',
  'Flammable vapour.': 'Vapor inflamable.',
  'No flame, spark or glowing heater, fan on, until it has cleared.':
    'Sin llamas, chispas ni estufas incandescentes, ventilador en marcha, hasta que se haya ido.',
  'Vapour of spirit, lacquer, oil finish, stripper and aerosol creeps along the floor to a pilot light, a heater, a switch or a motor.':
    'El vapor de alcohol, laca, aceite, decapante y aerosol se arrastra por el suelo hasta una llama piloto, una estufa, un interruptor o un motor.',
  'Put out what burns or glows and clear the vapour before anything is lit again.':
    'Apague lo que arda o esté al rojo y despeje el vapor antes de encender nada.',
  'Keep no more open than you use, ground metal cans when you pour, have an extinguisher for liquids by the door.':
    'No tenga abierto más de lo que usa, conecte a tierra los botes metálicos al verter, tenga junto a la puerta un extintor para líquidos.',
  'No open flame, spark or hot surface in a spray area, or within 20 ft of it without a partition.':
    'Ninguna llama, chispa ni superficie caliente en una zona de pulverizado, ni a menos de 20 ft de ella sin tabique.',
  'Residues of nitrocellulose and of peroxide-cured coatings must not meet in one booth; clean it between.':
    'Los restos de nitrocelulosa y de productos curados con peróxido no deben juntarse en una misma cabina; límpiela entre medias.',
  'Isocyanates sensitise the lungs': 'Los isocianatos sensibilizan los pulmones',
  'Isocyanates can cause asthma for life.': 'Los isocianatos pueden causar asma de por vida.',
  'Air-fed protection for spraying, skin covered; follow the label and local rules.':
    'Protección con aire suministrado al pulverizar, piel cubierta; siga la etiqueta y las normas locales.',
  'Two-part and moisture-cure polyurethanes hold isocyanates.':
    'Los poliuretanos de dos componentes y los que curan con humedad contienen isocianatos.',
  'Once sensitised, a trace brings on an attack, for life.':
    'A quien está sensibilizado, un rastro le provoca un ataque, de por vida.',
  'Filters do not warn when they are spent.': 'Los filtros no avisan cuando están agotados.',
  'Spraying needs supplied air and a booth, and in many places training or health checks by law.':
    'Pulverizar exige aire suministrado y una cabina, y en muchos sitios formación o reconocimientos médicos por ley.',
  'Without them do not spray; choose another finish.': 'Sin ello no pulverice; elija otro acabado.',
  'Keep it off the skin, keep others out until the film is through-dry, and see a doctor for any tight chest or cough, also at night.':
    'Que no toque la piel, que no entre nadie hasta que la película esté seca del todo, y vaya al médico ante cualquier opresión de pecho o tos, también de noche.',
  'US ceiling for the vapour of the two most used, 0.02 ppm.':
    'Techo en EE. UU. para el vapor de los dos más usados, 0.02 ppm.',
  'Old paint may hold lead': 'La pintura vieja puede llevar plomo',
  'Old paint may hold lead.': 'La pintura vieja puede llevar plomo.',
  'Test before anything abrades it.': 'Pruebe antes de que nada la lije.',
  'Sanding, scraping, heating or stripping old paint can set lead free as dust and fume; children and the unborn are harmed by the least of it.':
    'Lijar, raspar, calentar o decapar pintura vieja puede soltar plomo en polvo y humo; la menor cantidad daña a los niños y a los no nacidos.',
  'Test first, by a laboratory or a kit that your authorities accept.':
    'Pruebe antes, en un laboratorio o con un kit que acepten sus autoridades.',
  'A piece with lead goes to people trained and licensed for it, or is left as it is and sealed, as your local rules say.':
    'Una pieza con plomo va a personas formadas y con licencia para ello, o se deja como está y sellada, según digan las normas locales.',
  'Never dry-sand, dry-scrape or use an open flame or hot-air gun on it.':
    'Nunca la lije ni raspe en seco, ni use en ella llama abierta o pistola de aire caliente.',
  'Wet work, sheeting, a fit respirator and a washed-down shop are the least, and do not replace the rules.':
    'Trabajo en húmedo, cubiertas, una mascarilla ajustada y un taller lavado son lo mínimo, y no sustituyen a las normas.',
  'In the US, paid work that disturbs paint in housing or child-occupied places built before 1978 falls under the Renovation, Repair and Painting rule.':
    'En EE. UU., el trabajo pagado que altera pintura en viviendas o lugares con niños construidos antes de 1978 está sujeto a la norma de renovación, reparación y pintura.',
  'Loose furniture is not housing, but its dust is the same.':
    'Los muebles sueltos no son vivienda, pero su polvo es el mismo.',
  'Paint and coatings of furniture sold in the US may hold at most 0.009 % lead.':
    'La pintura y los recubrimientos de muebles vendidos en EE. UU. pueden llevar como mucho un 0.009 % de plomo.',
  Lifting: 'Levantar',
  'Two lift.': 'Levantar entre dos.',
  'Drawers out, way cleared, knees bent.': 'Cajones fuera, paso libre, rodillas dobladas.',
  'Take out what comes out, clear the way, agree who says when, lift with straight back and bent knees, and set down before you turn.':
    'Saque lo que salga, despeje el paso, acuerden quién da la voz, levanten con la espalda recta y las rodillas dobladas, y posen antes de girar.',
  'Strap doors.': 'Sujete las puertas con correas.',
  'Nobody walks backwards over a sill without being told of it.':
    'Nadie anda de espaldas sobre un umbral sin que se le avise.',
  'Oily rags set themselves alight': 'Los trapos con aceite arden solos',
  'Rags wet with drying oil can heat themselves to fire.':
    'Los trapos mojados de aceite secante pueden calentarse hasta arder.',
  'Flat outdoors on what does not burn, or under water in a lidded metal can.':
    'Extendidos al aire libre sobre algo que no arda, o bajo agua en un bote metálico con tapa.',
  'Label and fire code come first.': 'La etiqueta y la normativa contra incendios van primero.',
  'Cloths, pads, steel wool and sanding dust with drying oil, oil stain, oil varnish or hardwax oil warm themselves as the oil takes up oxygen.':
    'Paños, almohadillas, lana de acero y polvo de lijado con aceite secante, tinte al aceite, barniz al aceite o aceite de cera dura se calientan al tomar oxígeno el aceite.',
  'In a heap the heat stays, and they burn hours later with nobody near.':
    'En un montón el calor se queda, y arden horas después sin nadie cerca.',
  'Put each one at once in a lidded metal can, under water, or spread it flat, single, outdoors on something that does not burn until it is stiff.':
    'Meta cada uno enseguida en un bote metálico con tapa, bajo agua, o extiéndalo plano, suelto, al aire libre sobre algo que no arda hasta que esté tieso.',
  'Never in a bin, a pocket or a heap, also not until tonight.':
    'Nunca en un cubo de basura, un bolsillo o un montón, tampoco hasta la noche.',
  'Rags and waste with finishing material go at once into approved metal cans, emptied at least daily or each shift.':
    'Los trapos y restos con producto de acabado van enseguida a botes metálicos homologados, que se vacían al menos cada día o cada turno.',
  'The danger runs from about one hour to two or three days after use.':
    'El peligro va de más o menos una hora a dos o tres días después del uso.',
  'Driers in the oil and cellulose together are the worst case.':
    'Los secantes del aceite junto con la celulosa son el peor caso.',
  'Paint strippers': 'Decapantes',
  'Fresh air, gloves that resist it, eye protection, no flame.':
    'Aire fresco, guantes que lo resistan, protección ocular, sin llamas.',
  'Read the label of the stripper.': 'Lea la etiqueta del decapante.',
  'Strippers burn the skin and eyes, and some give vapour that can kill in a closed room.':
    'Los decapantes queman la piel y los ojos, y algunos dan un vapor que puede matar en una sala cerrada.',
  'Choose one without methylene chloride, work by an open door, have water at hand.':
    'Elija uno sin cloruro de metileno, trabaje junto a una puerta abierta, tenga agua a mano.',
  'The sludge holds the old finish, lead too where there was lead.':
    'El lodo lleva el acabado viejo, y plomo donde había plomo.',
  'It is special waste.': 'Es un residuo especial.',
  'In the US, strippers with methylene chloride are barred for consumers.':
    'En EE. UU., los decapantes con cloruro de metileno están prohibidos para consumidores.',
  'Two-part resins and fillers': 'Resinas y masillas de dos componentes',
  'Resin and hardener can sensitise the skin.': 'La resina y el endurecedor pueden sensibilizar la piel.',
  'Wear gloves, change them, and take nothing off with solvent.':
    'Lleve guantes, cámbielos, y no quite nada con disolvente.',
  'The reaction gives heat.': 'La reacción da calor.',
  'What is left in a deep pot can smoke; spread it out or set it outdoors until it is hard.':
    'Lo que queda en un bote hondo puede humear; extiéndalo o sáquelo al aire libre hasta que esté duro.',
  'Fresh air while it sprays and dries': 'Aire fresco mientras se pulveriza y seca',
  'Fan on and drawing away from you, vapour respirator for solvent, mist filter for water-borne.':
    'Ventilador en marcha que se lo lleve lejos de usted, mascarilla para vapores con disolvente, filtro de niebla con productos al agua.',
  'Air has to come in at one end and leave at the other, away from people and from what could light it.':
    'El aire ha de entrar por un extremo y salir por el otro, lejos de las personas y de lo que pueda encenderlo.',
  'Water-borne mist is not harmless; it too calls for a filter.':
    'La niebla al agua no es inofensiva; también pide filtro.',
  'Keep the fan on while it flashes off.': 'Deje el ventilador en marcha mientras se evapora.',
  'If you smell it strongly or feel light-headed, stop and go out.': 'Si lo huele con fuerza o se marea, pare y salga.',
  'Spray so ventilated that vapour stays below a quarter of the lower explosive limit.':
    'Pulverice con tal ventilación que el vapor quede por debajo de un cuarto del límite inferior de explosividad.',
};
