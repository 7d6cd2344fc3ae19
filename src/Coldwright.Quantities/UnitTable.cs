namespace Coldwright.Quantities;

/// <summary>
/// Every unit word that is understood. Sizes of the inch, pound, Btu (International Table), psi and horsepower:
/// NIST Special Publication 811 (2008), Appendix B; atm, bar and torr: the same, B.8.
/// </summary>
public static class UnitTable
{
    private static readonly Dimension _length = new(1, 0, 0, 0, 0);
    private static readonly Dimension _mass = new(0, 1, 0, 0, 0);
    private static readonly Dimension _time = new(0, 0, 1, 0, 0);
    private static readonly Dimension _temperature = new(0, 0, 0, 1, 0);
    private static readonly Dimension _amount = new(0, 0, 0, 0, 1);
    private static readonly Dimension _energy = new(2, 1, -2, 0, 0);
    private static readonly Dimension _power = new(2, 1, -3, 0, 0);
    private static readonly Dimension _pressure = new(-1, 1, -2, 0, 0);

    private static readonly Dictionary<string, Unit> _exact = new(StringComparer.Ordinal);
    private static readonly Dictionary<string, Unit> _anyCase = new(StringComparer.OrdinalIgnoreCase);

    static UnitTable()
    {
        Prefixed("m", _length, 1, ("n", 1e-9), ("µ", 1e-6), ("u", 1e-6), ("m", 1e-3), ("c", 1e-2), ("d", 1e-1), ("k", 1e3));
        Prefixed("g", _mass, 1e-3, ("µ", 1e-6), ("u", 1e-6), ("m", 1e-3), ("k", 1e3));
        Prefixed("s", _time, 1, ("µ", 1e-6), ("u", 1e-6), ("m", 1e-3));
        Prefixed("mol", _amount, 1, ("µ", 1e-6), ("u", 1e-6), ("m", 1e-3), ("k", 1e3));
        Prefixed("W", _power, 1, ("µ", 1e-6), ("u", 1e-6), ("m", 1e-3), ("k", 1e3), ("M", 1e6));
        Prefixed("J", _energy, 1, ("m", 1e-3), ("k", 1e3), ("M", 1e6));
        Prefixed("Wh", _energy, 3600, ("k", 1e3), ("M", 1e6));
        Prefixed("Hz", _time.Power(-1), 1, ("k", 1e3));
        Prefixed("L", _length.Power(3), 1e-3, ("µ", 1e-6), ("u", 1e-6), ("m", 1e-3), ("c", 1e-2), ("d", 1e-1));
        Prefixed("l", _length.Power(3), 1e-3, ("m", 1e-3), ("c", 1e-2), ("d", 1e-1));

        AnyCase(_length, 0.0254, "in", "inch", "inches", "\"");
        AnyCase(_length, 0.3048, "ft", "foot", "feet");
        AnyCase(_mass, 0.45359237, "lb", "lbs", "lbm");
        AnyCase(_mass, 0.028349523125, "oz");
        AnyCase(_time, 60, "min", "minute", "minutes");
        AnyCase(_time, 3600, "h", "hr", "hour", "hours");
        AnyCase(_time, 86400, "d", "day", "days");
        AnyCase(_time, 1, "second", "seconds", "sec");
        AnyCase(_length.Power(3), 1e-6, "cc", "ccm");
        AnyCase(_length.Power(3), 1e-3, "litre", "litres", "liter", "liters");
        AnyCase(_length.Power(3) / _time, 0.3048 * 0.3048 * 0.3048 / 60, "cfm");
        AnyCase(_energy, 1055.05585262, "BTU");
        AnyCase(_power, 1055.05585262 / 3600, "BTU/h", "BTU/hr", "BTUH");
        AnyCase(_power, 745.69987158227022, "hp");
        AnyCase(_time.Power(-1), 1.0 / 60, "rpm", "rev/min", "r/min");
        AnyCase(_time.Power(-1), 1, "rev/s", "rps");
        AnyCase(Dimension.None, 0.01, "%", "percent", "pct");
        AnyCase(Dimension.None, 1e-6, "ppm");
        AnyCase(Dimension.None, 1, "rev");

        Exact(new("K", _temperature, 1), "K", "kelvin", "Kelvin");
        Exact(new("mK", _temperature, 1e-3, UnitReference.TemperatureDifference), "mK");
        Exact(new("°C", _temperature, 1, UnitReference.TemperaturePoint, 273.15), "°C", "C", "degC", "deg C", "° C", "celsius", "Celsius");
        Exact(new("°F", _temperature, 1 / 1.8, UnitReference.TemperaturePoint, 459.67), "°F", "F", "degF", "deg F", "° F", "fahrenheit", "Fahrenheit");
        Exact(new("°R", _temperature, 1 / 1.8), "°R", "degR", "deg R", "rankine", "Rankine");
        Exact(new("Δ°C", _temperature, 1, UnitReference.TemperatureDifference), "Δ°C", "Δ°C", "ΔC", "deltaC", "delta °C");
        Exact(new("Δ°F", _temperature, 1 / 1.8, UnitReference.TemperatureDifference), "Δ°F", "Δ°F", "ΔF", "deltaF", "delta °F");

        Pressure("Pa", 1, anyCase: false);
        Pressure("hPa", 1e2, anyCase: false);
        Pressure("kPa", 1e3, anyCase: false);
        Pressure("MPa", 1e6, anyCase: false);
        Pressure("bar", 1e5, anyCase: true);
        Pressure("mbar", 1e2, anyCase: true);
        Pressure("psi", 6894.757293168361, anyCase: true);
        Pressure("atm", 101325, anyCase: true);
        Pressure("torr", 101325.0 / 760, anyCase: true);
        Pressure("mmHg", 133.322387415, anyCase: true);
        Pressure("inHg", 3386.389, anyCase: true);
    }

    /// <summary>All single unit words of a dimension, for "did you mean".</summary>
    public static IEnumerable<(string Word, Unit Unit)> Words => _exact.Select(p => (p.Key, p.Value));

    /// <summary>Finds one unit word, such as <c>mm</c> or <c>barg</c>; compounds are <see cref="UnitExpression"/>'s work.</summary>
    public static bool TryFindWord(string word, out Unit unit) =>
        _exact.TryGetValue(word, out unit!) || _anyCase.TryGetValue(word, out unit!);

    private static void Exact(Unit unit, params ReadOnlySpan<string> words)
    {
        foreach (var word in words) _exact[word] = unit;
    }

    private static void AnyCase(Dimension dimension, double factor, params ReadOnlySpan<string> words)
    {
        var unit = new Unit(words[0], dimension, factor);
        foreach (var word in words) _exact[word] = _anyCase[word] = unit;
    }

    // Prefixes are listed unit by unit so that no accidental word ("min" as a milli-inch, "mPa" read as "MPa") comes into being.
    private static void Prefixed(string symbol, Dimension dimension, double factor, params ReadOnlySpan<(string Prefix, double Size)> prefixes)
    {
        _exact[symbol] = new Unit(symbol, dimension, factor);
        foreach (var (prefix, size) in prefixes) _exact[prefix + symbol] = new Unit(prefix + symbol, dimension, factor * size);
    }

    private static void Pressure(string symbol, double factor, bool anyCase)
    {
        Add(new Unit(symbol, _pressure, factor), symbol);
        Add(new Unit(symbol + "g", _pressure, factor, UnitReference.Gauge), symbol + "g", symbol + " g", symbol + "(g)", symbol + " (g)", symbol + " gauge");
        Add(new Unit(symbol + "a", _pressure, factor, UnitReference.Absolute), symbol + "a", symbol + " a", symbol + "(a)", symbol + " (a)", symbol + " abs", symbol + " absolute");

        void Add(Unit unit, params ReadOnlySpan<string> words)
        {
            foreach (var word in words)
            {
                _exact[word] = unit;
                if (anyCase) _anyCase[word] = unit;
            }
        }
    }
}
