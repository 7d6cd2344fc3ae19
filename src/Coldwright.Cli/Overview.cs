namespace Coldwright.Cli;

/// <summary>What a person sees who types the program's name alone.</summary>
internal static class Overview
{
    public const string Text = """
        coldwright predicts small mixed-gas Joule-Thomson coolers: how cold, how much liquid, at what
        watts and cost, and where it loses. Every number comes from computed fluid properties.

          coldwright new DIR           write a commented starter folder for your own cooler
          coldwright check DIR         read a cooler's folder and report every problem
          coldwright page DIR          the cooler in your browser: see it, change it, rate it
          coldwright rate DIR          rate the cooler: temperature, cooling, litres per hour, watts, losses
          coldwright batch DIR         feed, condense, discharge: where each gram goes, the best schedule
          coldwright blend DIR         which mixture gives most on this hardware, from the gases at hand
          coldwright charge DIR        how to fill it: gas after gas, by gauge and scale
          coldwright size DIR PART     length, wall or bore of a part, from real stock, with a cut list
          coldwright cooldown DIR      temperature against time: how long, where it stops, and why there
          coldwright safety DIR        what can hurt somebody: pressure, trapped liquid, fire, air
          coldwright import RUN        read a run's log: what the sensors said, how far to trust it
          coldwright record DIR        log a run live from a serial port, standard input or an MQTT broker
          coldwright explain RUN       where the cold of a run went, how sure that is, what to measure next
          coldwright next RUN          what to change next, by litres per hour gained
          coldwright state MIXTURE     one state point of a fluid, or a whole table of them
          coldwright envelope MIXTURE  where a mixture boils, condenses, splits and freezes

        Try
          coldwright page examples/workshop
          coldwright state "nitrogen 0.35, methane 0.65" -T "-150 °C" -p "17 barg" --model both
        Every quantity carries its unit: "17 barg" (on a gauge), "18 bara" (above vacuum), "-150 °C".

        Everywhere
          --json            machine-readable answer, alone on standard output
          --report OUT_DIR  one self-contained page with pictures
          --units si|us     K and bar, or °F and psi
          --model WORD      reference (default of state, envelope), cubic, or both (default of rate)
          --help            what a command takes
        Exit code 0: done. 1: the answer is no (limit broken, no solution). 2: the input is wrong.
        Local codes and licensed practice come first; nothing here is a certificate.

        """;
}
