namespace Coldwright.Cli;

/// <summary>What a person sees who types the program's name alone.</summary>
internal static class Overview
{
    public const string Text = """
        coldwright predicts small mixed-gas Joule-Thomson coolers: how cold, how much liquid, at what
        watts and cost, and where it loses. Every number comes from computed fluid properties.

          coldwright new DIR           write a commented starter folder for your own cooler
          coldwright check DIR         read a cooler's folder and report every problem
          coldwright rate DIR          rate the cooler: temperature, cooling, litres per hour, watts, losses
          coldwright batch DIR         feed, condense, discharge: where each gram goes, the best schedule
          coldwright cooldown DIR      temperature against time: how long, where it stops, and why there
          coldwright safety DIR        what can hurt somebody: pressure, trapped liquid, fire, air
          coldwright import RUN        read a run's log: what the sensors said, how far to trust it
          coldwright state MIXTURE     one state point of a fluid, or a whole table of them
          coldwright envelope MIXTURE  where a mixture boils, condenses, splits and freezes

        Try
          coldwright rate examples/workshop
          coldwright rate examples/workshop --report out
          coldwright safety examples/workshop
          coldwright state nitrogen -p "17 barg" --vapour-fraction 0
          coldwright state "nitrogen 0.35, methane 0.65" -T "-150 °C" -p "17 barg" --model both
          coldwright envelope "nitrogen 0.3, methane 0.4, ethane 0.3" --report out

        Every quantity carries its unit: "17 barg" (what a gauge shows) or "18 bara" (above vacuum),
        "-150 °C", "300 K", "-1200 J/mol".

        Everywhere
          --json            machine-readable answer, alone on standard output
          --report OUT_DIR  one self-contained page with pictures
          --units si|us     K and bar, or °F and psi
          --model WORD      reference (default of state, envelope), cubic, or both (default of rate)
          --no-colour       plain text
          --help            what a command takes

        Exit code 0: done. 1: the answer is no (a limit is broken, no solution, a serious finding).
        2: the input is wrong.
        Local codes and licensed practice come first; nothing here is a certificate.

        """;
}
