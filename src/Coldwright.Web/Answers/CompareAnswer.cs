using Coldwright.Report;
using Coldwright.Report.Views;

namespace Coldwright.Web.Answers;

/// <summary>Two coolers rated.</summary>
/// <param name="FirstName">Name of the one.</param>
/// <param name="First">Its rating.</param>
/// <param name="SecondName">Name of the other.</param>
/// <param name="Second">Its rating.</param>
internal sealed record CompareAnswer(string FirstName, Rated First, string SecondName, Rated Second)
{
    public string Html(UnitSystem units) =>
        CompareView.Write(new(FirstName, First.Report(units)), new(SecondName, Second.Report(units)), Differences.Between(First.Files.Text!, Second.Files.Text!));

    public string Loop(bool isFirst, UnitSystem units)
    {
        var rated = isFirst ? First : Second;
        return RatingView.Loop(rated.Report(units), rated.Files.Folder.Layout!, isPhone: true);
    }
}
