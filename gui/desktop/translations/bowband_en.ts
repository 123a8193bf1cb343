<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="en_US">
<context>
    <name>gui::BowHandle</name>
    <message>
        <source>Bow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow: drag it along the string to change the contact point, up for more force and down for less. Left and right keys move it, up and down keys change the force.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::BowPad</name>
    <message>
        <source>Bowing place and force</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag to bow: across is the contact point, upwards is the bow force. Arrow keys do the same.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 from the bridge, %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>contact point, mm from the bridge (bridge on the right)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>bow force, N</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>does not speak</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>speaks, but weak, dull or flat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sings</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::Card</name>
    <message>
        <source>There is no sound output: connect loudspeakers or headphones, then start again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound output could not be opened: another program may hold it, or it is switched off.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound output no longer takes any sound: check it, then start again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound output was lost: connect it again, then start.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::ClimbPage</name>
    <message>
        <source>The climb, stop by stop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The same numbers, a line for each stop; choose a line to put the finger there.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every stop of the string: where the bow does best, and what happens to a bow left behind.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Chart of the climb</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The &amp;climb</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::Desk</name>
    <message>
        <source>My instrument</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The simulation stopped</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sound</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::Export</name>
    <message>
        <source>%1 files (*.%2)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table of the climb, CSV</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table of the climb, JSON</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table of the window, CSV</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table of the window, JSON</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Every stroke of the window, CSV</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sounds (*.wav *.flac)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sound of the note, bow left behind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sound of the note, bow follows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sound of the climb, bow left behind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sound of the climb, bow follows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Preset of the instrument, JSON</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table of the strings, CSV</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table of the strings, JSON</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table of the recording&apos;s notes, CSV</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table of the recording&apos;s notes, JSON</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What you played</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sounds (*.flac *.wav)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table of where the bow was, CSV</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table of where the bow was, JSON</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::FingerHandle</name>
    <message>
        <source>Finger</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Finger: drag it along the string, or use the arrow keys. Where it stops the string makes the note.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::FirstSteps</name>
    <message>
        <source>First steps</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hear the tone fail and come back, in three steps</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>1.  Press B: the bow is drawn over the open string, at its best place.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>2.  Drag the finger on the drawn string up to the middle or beyond. The bow is left behind: the tone grows weak, goes flat, or breaks.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>3.  Press F: the bow follows to where this note wants it, nearer the bridge. The tone comes back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Be&amp;gin</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::GaugesTable</name>
    <message>
        <source>String</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>band, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>best, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>secure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>forgives, dB</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>brightness, f0</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>least force, N</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pull, N</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All strings, N</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Impedance, kg/s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Inharmonicity, 1e-5</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Q</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>f L, Hz m</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To mind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>now: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>none</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 (%2 %)</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::HearPage</name>
    <message>
        <source>Bow on the string  (B)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow follows the finger  (F)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Contact point</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Contact point: where the hair touches the string, from the bridge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>N</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow force</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow force: how firmly the hair presses; 1 N is the weight of about 100 g.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>m/s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow speed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow speed: how fast the hair is drawn; a whole bow in three seconds is about 0.2 m/s.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow by hand and hear the tone fail and come back; or listen to takes with the bow left behind and with the bow following.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Puts the bow on the string or takes it off. Key B.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>On: the bow moves to the best contact point of each note. Off: it is left behind where it is. Key F.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motion of the string</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the string does under the bow. In Helmholtz motion a corner runs round the string once a period: the tone sings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is heard</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Caution</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Volume</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Vo&amp;lume</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Contact &amp;point</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow f&amp;orce</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow &amp;speed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Takes to compare, at one volume:</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note, left behind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This note with the bow where it is now.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note, bow follows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This note with the bow at its best contact point.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Climb, left behind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All stops, the bow staying where it suited the open string.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Climb, bow follows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All stops, the bow at the best contact point of each.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Progress of the takes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Takes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hear &amp;it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The string %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no pitch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, %2 dB</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The bow is off the string</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Press B, then drag in the field or on the string.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::Instrument</name>
    <message>
        <source>%1 – %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This preset can&apos;t be opened; the instrument at hand stays.
%1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The instrument could not be saved; it stays open and unsaved. Save it elsewhere.
%1</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::InstrumentPage</name>
    <message>
        <source>Caution</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Your own instrument: set it up step by step from one of the presets, or change any value in the table.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set &amp;up my instrument …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measure string, pitch, finger and hair, and choose the strokes you like; step by step.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Part shown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Part of the instrument shown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Change a value by double click or F2; Ctrl+Z takes it back.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Values of the instrument</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Everything</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Your instrument is set up. Save it by File, Save.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;My instrument</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::LessonPage</name>
    <message>
        <source>&amp;Open it when it is ready</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Make the page …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open in the bro&amp;wser</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Give &amp;up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A page to hand out: the string, the bow&apos;s places, sounds and charts in one file for any browser.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lowest stop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Highest stop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> semitones</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How long each stop sounds</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stops to listen to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;From stop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To s&amp;top</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Each sounds for</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stops to &amp;listen to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The page holds the rule in plain words, the string to scale with the bow&apos;s places, every chosen stop with the bow left behind and following to listen to, the numbers for this player, how to practise, cautions and charts. It is one file: it opens in any browser without a network, and prints on A4 and Letter.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How the page comes along</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Progress of the page</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Given up; nothing was written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The lesson&apos;s page</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Asks where the file is to go, then makes it; some ten seconds.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Choose 1 to %1 stops to listen to.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pages (*.html)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The page is being made …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The page is in %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The lesson&apos;s page is in %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The page is in %1; no browser was found to open it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Lesson</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::LineTable</name>
    <message>
        <source>&amp;As a table</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;As a chart</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::ListeningPanel</name>
    <message>
        <source>&amp;Listen to me play</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rec&amp;ord</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note heard</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pitch against the selected note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Brightness</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motion of the string, by its sound</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Does it keep its tone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>State of the microphone</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pitch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motion</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How loud it is can&apos;t be judged: distance, room and microphone are not known. Brightness is held against the simulated instrument, whose body is not yours; the motion is a guess by ear. Nothing is stored unless you record.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What this can&apos;t tell</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Takes the microphone and tells what it hears of you, against the note under the finger.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Keeps what comes in until you press again, ten minutes at the most; then asks for a file.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Listening …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>St&amp;op and save …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The microphone is off.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>–</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no clear pitch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1  %2 cents</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 times the pitch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1; </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Too loud for the microphone: turn its level down or stand farther away.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>another note than %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 cents from %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>, %1 of the note&apos;s best</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Play %1, or put the finger where you play.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Too low to keep its tone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Too high to keep its tone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In tune.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In tune and bright enough: it keeps its tone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In tune, but dull beside the note&apos;s best.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recording: %1 s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Listening; nothing is stored.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recording</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was written.
%1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What you played is in %1</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::MainWindow</name>
    <message>
        <source>What was done last</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>String</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>St&amp;ring</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The string that is bowed, with the pitch it is tuned to.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stop in semitones</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>S&amp;top, semitones</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stop: how many semitones the finger stands above the open string.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pages</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1[*] – Bowband</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Edit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Redo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;File</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;New from a preset</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Open …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open &amp;recent</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Save</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save &amp;as …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Export from this page</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Print this page …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Bow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Bow on the string</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow &amp;follows the finger</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As the &amp;system has it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Light</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Dark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;First steps</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;About Bowband</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>About Bowband</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bowband %1

Where the bow must go for a note to speak, by simulation. The shipped instruments are working proposals, not measurements; expect single notes to come out differently on a real one.

%2

High positions strain hand and shoulder: rest, stop on pain. Nothing here is medical advice.

Free software under GPL-3.0-or-later.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>none yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing to export on this page yet</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing was written.
%1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 is in %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unsaved changes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 has changes that are not saved.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a preset</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Presets (*.json)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Save the instrument</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This page has no chart to print yet; the climb and the window have.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Printed.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::MatchWords</name>
    <message>
        <source>on any string</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>on string %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>on string %1, stop %2 (%3)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>on string %1, open (%2)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>inside</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>partly</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>outside</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no band</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: no pitch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: %2 on string %3, open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: %2 on string %3, stop %4</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No note was found in %1.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 against %2. %3</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: of none of its notes can it be told where the bow was; %2. Was it played on this instrument (%3), where it was looked for?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>this note has no contact band</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>its contact band is not known</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note %1: nothing can be said; %2.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note %1: bowed %2 to %3 from the bridge, most likely at %4; %5.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound does not tell the string: this one has %1 of the likelihood.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From … to holds %1 of the likelihood, among strokes of %2 to %3 at %4. Trust it less where your strings, rosin or bow speed are unlike the instrument&apos;s; a stroke that does not speak may be taken for one that speaks elsewhere.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the sound does not tell the string, choose it above and ask again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no band; in the stretch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no band; partly in the stretch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no band; outside the stretch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Notes bowed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> inside the contact band: %1, partly inside: %2, outside: %3;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> without a secure band: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> (inside the most secure stretch: %1, partly inside: %2, outside: %3);</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> that can&apos;t be told: %1;</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, which is %2 to %3</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>inside %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>partly inside %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>too near the bridge, outside %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>too far from the bridge, outside %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no place is secure enough for a band, %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the most secure stretch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the contact band</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::MatchedNotes</name>
    <message>
        <source>No.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From, s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>String</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow from, to, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Most likely, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Force, N</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In the band?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Band, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To mind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Notes in the order in which they sound.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the note begins.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The nearest note at the instrument&apos;s own pitch.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A string that the note may be on; the likeliest stands first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Semitones above the open string.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How likely it is that the note is on this string.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From the bridge: the shortest region that holds as much of the likelihood as is said above.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Contact point of the likeliest stroke, from the bridge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow force, at the bow speed that is said above.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Why nothing can be said.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no pitch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>can&apos;t be told</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>String sure, %</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Whether the bow was inside the note&apos;s contact band, or its most secure stretch where it has no band.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The contact band of this note, from the bridge; in brackets its most secure stretch where there is none.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>(%1 to %2)</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::Microphone</name>
    <message>
        <source>There is no sound input: connect a microphone, then listen again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound input could not be opened: another program may hold it, or it is switched off.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound input was lost: connect it again, then listen.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::NotesTable</name>
    <message>
        <source>Bar</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>String</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Finger</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Best, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Band, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Force, N</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Good</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow follows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow left behind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bar of the tune.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The note as it is written.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>String it is played on.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the finger stops the string.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>0 is the open string.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Which of the hand places, in their order.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the bow is in the middle of the note, from the bridge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the bow does best on this note, from the bridge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The contact band; in brackets the most secure stretch where there is no band.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Force of the simulated stroke.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Share of good strokes where the bow is.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the string does in the simulated passage, the bow following.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What it does with the bow left behind where it suited the lowest note.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no bow can stand there</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 – %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>none</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>(%1)</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::PassagePage</name>
    <message>
        <source>Tune</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Studies invented for this program.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a &amp;tune …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>MusicXML, MIDI or words.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>or type notes with their lengths: D4:1 E4:1/2 F4 A4:2, then Enter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Notes typed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hear it le&amp;ft behind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The bow stays where it suited the lowest note.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hear it follo&amp;wing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The bow goes the way that the chart shows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The passage, note by note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The same numbers, a line for each note.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a tune</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tunes (*.musicxml *.xml *.mxl *.mid *.midi *.txt);;All files (*)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A whole tune: where the fingers fall, how the bow moves with them, and what becomes of a bow left behind.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Chart of the passage</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The &amp;passage</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::PassageText</name>
    <message>
        <source>%1 files (*.%2)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sounds (*.wav *.flac)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table of the passage, CSV</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Table of the passage, JSON</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Score with fingers and bow, MusicXML</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sound of the passage, bow left behind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sound of the passage, bow follows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This tune can&apos;t be played here. %1</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::PresetFields</name>
    <message>
        <source>Instrument</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the instrument is called in lists and on charts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Kind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The family it belongs to, such as bass viol.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Remark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Anything worth knowing about this preset.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pitch of A4</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hz</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The pitch that the instrument is tuned to, as the frequency of the A above middle C.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Tied frets</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How many frets are tied on, one a semitone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>End of the board</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From nut to end of the fingerboard, as a part of the string&apos;s length.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Width of the hair</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How wide the flat ribbon of bow hair is where it touches the string.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Player</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lightest stroke</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>N</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The least force with which you press bow on string; 1 N is the weight of about 100 g.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Firmest stroke</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The greatest force with which you press bow on string.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow speed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>m/s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How fast the hair is drawn over the string once the stroke is under way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rise of the speed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>ms</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How long the bow takes from rest to its speed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wander</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How far the bow strays to either side of the place you aim at.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pitch tolerance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cents</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How far a note may lie from its pitch; 100 cents are a semitone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time to speak</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How long a note may take to begin to sing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time to speak, in periods</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>periods</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The same counted in vibrations of the note; the longer of the two counts.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Level that may be lost</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>dB</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How much weaker than the best of the same note a stroke may be.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Least brightness</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How bright the tone must be, as a part of the best of the same note.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Share asked of a band</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The share of strokes that must be good for a place to count as in the contact band.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Width of a finger</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Places on the string are also told in this many millimetres at a time.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Span of the hand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From first to fourth finger, as the hand lies on the string.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Material</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the string is made of: gut, overspun gut, steel and others.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Diameter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The thickness of the string.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Mass</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>g/m</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The weight of one metre of the string.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bends like plain</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The diameter of the plain string that bends as easily.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bending stiffness</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>N m²</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How much the string resists bending.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Twist speed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How much faster twists run along the string than its ordinary waves.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Twist impedance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>kg/s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How much the string resists being rolled under the bow.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>String %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the string is called.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open pitch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The note of the open string, such as D4, Bb3 or F#4.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Length, nut to bridge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The part of the string that sounds when it is open.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bridge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Resistance</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How much the bridge resists being moved, alike at every pitch.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Body mode %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Frequency</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The pitch at which this part of the body rings.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Q</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How long it rings: a high Q rings long and answers a narrow range.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>kg</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How heavy it seems to the string at the bridge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Radiation</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How strongly it is heard; the sign tells its side of the swing.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::PresetTable</name>
    <message>
        <source>Part</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Value</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Unit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From … to</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Source</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 … %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, %2: %3 %4</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>source of %1, %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: must be a number from %2 %3, is &quot;%4&quot;.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::RecordedNotes</name>
    <message>
        <source>From, s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To, s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Off by, cents</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pitch, Hz</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Varies, ± cents</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Brightness</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Clear, dB</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Clean, ms</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Motion, by its sound</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the note begins.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where it ends.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The nearest note at the instrument&apos;s own pitch.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How far the note lies above it; 100 cents are a semitone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The median over the steady part.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How far the pitch goes either way: vibrato, or an unsteady tone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The centroid of the partials to 8 kHz, in multiples of the pitch: a dull tone has 2, a bright one 6.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Harmonic-to-noise ratio: the tone against the noise of bow and room.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Time from the beginning until the tone is clean.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How the string seems to move, with the share of such sounds for which that is right.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no pitch</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::RecordingsPage</name>
    <message>
        <source>Cancel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the recording says</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a recording of single notes, WAV, FLAC, AIFF, Ogg or MP3, or one of the two examples.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a recordin&amp;g …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A sound file of single notes, one or two channels.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Example: bow follows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A simulated climb, the bow going to the best contact point of each note.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Example: left behind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The same climb, the bow staying where it suited the lowest note.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Progress of the analysis</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The same, a line for each note.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Chart of the recording</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Notes of the recording</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This recording can&apos;t be analysed</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open a recording</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Sounds (*.wav *.flac *.aiff *.aif *.ogg *.mp3)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pictures (*.png *.svg *.pdf)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Recordings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Holds the recording against simulated strokes of the instrument and the bow speed on the stage: where the bow may have been on each note, and whether that is inside the contact band. Takes a while.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the notes are looked for</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is shown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The recording as a whole, or where the bow was on one of its notes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Shown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the recording</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>There is no recording yet: open one, or record what you play, then ask again.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the bow was can&apos;t be told</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Chart of where the bow was</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where was the bow?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the bow was, note by note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What a recording says of each note: pitch, brightness, motion, where the bow was; and what the microphone hears as you play.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Gives up what is being worked out.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>String and stop are those on the stage. On any string takes longer and may name a wrong one.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::ScreenText</name>
    <message>
        <source>%1 mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 N</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 m/s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 Hz</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 finger-widths</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>open</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sings (Helmholtz motion)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>whispers (several slips a period)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>growls (raucous)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>croaks below its pitch (anomalous low)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>hollow (S-motion)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>silent</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nothing</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>slow to speak</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>never slips</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>force too small</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>force too great</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>wrong motion</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tone weak</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tone dull</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>flat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sharp</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no room before the bridge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no room before the finger</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No stroke of this range speaks anywhere on this note.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Best at %1 from the bridge (%2); %3 of strokes good.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Contact band</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No secure band; most secure stretch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: %2 to %3, %4 wide (%5).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not clear from the sound</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1, %2 sure</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::SetUpWizard</name>
    <message>
        <source>mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Length of the string</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hz</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pitch of A4</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Width of a finger</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Width of the hair</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set up my instrument</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Which instrument is nearest to yours?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Its body, strings and rosin are taken over; what you can measure comes next.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The one at hand: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nearest instrument</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name of your instrument</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Nearest instrument</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>N&amp;ame of yours</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measure the string and its pitch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lay a rule along the string, from the edge of the nut to the middle of the bridge. The other strings are taken to be longer or shorter alike.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>String that is measured</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;String measured</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Length, nut to bridge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Pitch of A4, by a tuner</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Measure your finger and the hair</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A finger&apos;s width is across the pad of the first finger as it lies on the string. The hair is measured across the ribbon, at the middle of the bow.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Width of a &amp;finger</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Width of the &amp;hair</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Which strokes do you like?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The open string, bowed from light to firm. Tick two or more that could be yours: they become the range of forces. None ticked: the preset&apos;s range stays.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bowing the strokes …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>I like it: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hear</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hear the stroke of %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>set up my instrument</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::StageView</name>
    <message>
        <source>nut</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>guide fret</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>end of the board</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>bridge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>open string</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>stop %1, %2 from the nut</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1: %2; %3 sounding</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>bow %1 from the bridge (%2), %3, %4</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>String from nut to bridge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Looking for the band of this note …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 (coarse)</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::StopsTable</name>
    <message>
        <source>Stop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>From nut, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Best, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Finger-widths</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Band, mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bow follows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left behind</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Left behind fails by</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Semitones above the open string.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Its name at the instrument&apos;s own pitch.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Where the finger stops the string, from the nut.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The best contact point: where the bow does best, from the bridge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The same, in widths of your finger.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The contact band: where enough of the strokes are good, from the bridge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Share of good strokes with the bow at the best contact point of each note.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Share of good strokes with the bow where it suited the lowest note.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What most often goes wrong with the bow left behind.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>none</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>%1 – %2</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::StringsPage</name>
    <message>
        <source>Strings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>this string, thinner to thicker</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>this string, other materials at the same pull</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>all strings of the instrument</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is shown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>widest band first</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>most forgiving first</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>least force first</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>nearest to the present pull first</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Order of the strings shown</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ranked at the octave.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tuned higher by </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> semitones</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>All strings tuned higher by, semitones</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Caution: %1</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The strings side by side</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Which gauge suits the string: its band at the open string and high up, its pull, and what may break.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Chart of the strings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Strings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The same numbers, a line for each string.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::StripExports</name>
    <message>
        <source>To print at true size (*.pdf *.svg)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fret strip to print at true size</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Contact ruler to print at true size</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::StudyPage</name>
    <message>
        <source>What it says</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Progress of the simulation</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>being worked out anew …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>being worked out …</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pictures (*.png *.svg *.pdf)</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Chart</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lar&amp;ger</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The chart as wide as the window; scroll to see all of it.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::TakePlayer</name>
    <message>
        <source>No sound can be played: this computer shows no sound device that takes it. Everything else works, and sounds can be saved as files.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The sound device gave up. Look whether it is plugged in, and try again.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::WindowPage</name>
    <message>
        <source>The note under the finger: at which contact points and forces it speaks, and where it keeps its tone.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Chart of the window</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The &amp;window of the note</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::Words</name>
    <message>
        <source>Start low: turn the volume up slowly, headphones above all. Loud playback harms hearing.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Strings break: keep your face away, wear glasses, raise the pitch slowly and never past what the string bears. Ask a maker before you raise the pull on an old instrument.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>gui::start</name>
    <message>
        <source>Shows and sounds where on the string the bow must go.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A preset file to open.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
</TS>
