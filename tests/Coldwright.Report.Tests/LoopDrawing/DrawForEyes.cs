using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Report.Loops;

namespace Coldwright.Report.Tests.LoopDrawings;

/// <summary>Writes every drawing to the folder named by COLDWRIGHT_RENDER so that a person can look at them; does nothing without it.</summary>
public class DrawForEyes
{
    [Fact]
    public void WritesTheDrawings()
    {
        if (Environment.GetEnvironmentVariable("COLDWRIGHT_RENDER") is not { Length: > 0 } folder) return;
        Directory.CreateDirectory(folder);
        foreach (var (i, drawn) in Machines.All.Index())
        {
            var figures = Machines.Figures(drawn);
            if (i == 1) figures = figures with { Marks = [new(drawn.Layout.Vessel!.Name, "danger", "trapped liquid"), new("charge", "serious", "flammable charge"), new(drawn.Layout.Aftercooler.Name, "serious", "rated too low"), new(drawn.Layout.ColdBox!.Name, "serious", "wet")] };
            var units = i == 2 ? UnitSystem.Us : UnitSystem.Si;
            string Draw(bool isPhone) => LoopDrawing.Svg(drawn.Machine, drawn.Layout, figures, units, isPhone);
            var html = new HtmlText().Element("h1", drawn.Name).Inside("figure", "", h => h.Raw(Draw(false) + Draw(true)));
            File.WriteAllText(Path.Combine(folder, $"loop-{drawn.Name}.html"), Page.Write(drawn.Name, html));
        }
    }
}
