using System.Globalization;

namespace Coldwright.Report.Envelopes;

/// <summary>The points of all lines as comma-separated text.</summary>
public static class EnvelopeCsv
{
    /// <summary>Writes the table: <c>model,line,kind,between,T_K,p_Pa</c>, critical points as lines of one point.</summary>
    /// <param name="report">The envelope.</param>
    /// <param name="writer">Gets the text, LF.</param>
    public static void Write(EnvelopeReport report, TextWriter writer)
    {
        writer.Write("model,line,kind,between,T_K,p_Pa\n");
        foreach (var model in report.Envelopes)
        {
            int number = 0;
            foreach (var line in model.Envelope.Lines)
            {
                number++;
                foreach (var p in line.Points) Row(model.Model, number, EnvelopeWords.Key(line.Kind), line.Between, p.TemperatureK, p.PressurePa);
            }
            foreach (var c in model.Envelope.CriticalPoints) Row(model.Model, ++number, c.Stable ? "critical" : "hidden_critical", "", c.TemperatureK, c.PressurePa);
        }

        void Row(string model, int number, string kind, string between, double temperatureK, double pressurePa) =>
            writer.Write(string.Create(CultureInfo.InvariantCulture, $"{model},{number},{kind},{between},{temperatureK:G8},{pressurePa:G8}\n"));
    }
}
