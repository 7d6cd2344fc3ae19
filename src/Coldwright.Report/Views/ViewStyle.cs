using Coldwright.Report.Charts;
using Coldwright.Report.Html;
using Coldwright.Report.Loops;

namespace Coldwright.Report.Views;

/// <summary>The style sheet of report pages, for a page that shows views.</summary>
public static class ViewStyle
{
    /// <summary>Style sheet text.</summary>
    public static string Css => $"{ChartStyle.Css}\n{LoopStyle.Css}\n{PageStyle.Css}";
}
