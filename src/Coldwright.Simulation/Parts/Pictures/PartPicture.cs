namespace Coldwright.Simulation.Parts.Pictures;

/// <summary>Something about a part worth drawing, as data; the report draws it.</summary>
/// <param name="Id">Name in machine-readable output, snake case.</param>
/// <param name="Title">Heading.</param>
/// <param name="Reading">How to read it, in sentences without units.</param>
public abstract record PartPicture(string Id, string Title, string Reading);

/// <summary>What a colour stands for.</summary>
public enum PictureRole
{
    /// <summary>Neutral.</summary>
    Plain,
    /// <summary>High-pressure (warm) stream.</summary>
    HighSide,
    /// <summary>Low-pressure (cold) stream.</summary>
    LowSide,
    /// <summary>Cooling and what makes it.</summary>
    Cooling,
    /// <summary>Heat from the room, and limits.</summary>
    Leak,
    /// <summary>A second voice.</summary>
    Other,
    /// <summary>Loss.</summary>
    Loss,
}

/// <summary>Lines over two axes.</summary>
public sealed record LinePicture(string Id, string Title, string Reading) : PartPicture(Id, Title, Reading)
{
    /// <summary>Horizontal axis.</summary>
    public required PictureAxis X { get; init; }
    /// <summary>Vertical axis.</summary>
    public required PictureAxis Y { get; init; }
    /// <summary>The lines; at least one, each with two points or more.</summary>
    public required IReadOnlyList<PictureLine> Lines { get; init; }
    /// <summary>Marked points.</summary>
    public IReadOnlyList<PictureMark> Marks { get; init; } = [];
    /// <summary>Upright lines: limits and places.</summary>
    public IReadOnlyList<PictureUpright> Uprights { get; init; } = [];
    /// <summary>Named ranges above the plot; null for none.</summary>
    public PictureRanges? Above { get; init; }
    /// <summary>Named ranges below the plot.</summary>
    public PictureRanges? Below { get; init; }
    /// <summary>True when the vertical axis begins at zero.</summary>
    public bool FromZero { get; init; }
}

/// <summary>An axis.</summary>
/// <param name="Name">What it shows, without unit.</param>
/// <param name="Unit">SI unit of the data.</param>
/// <param name="IsDifference">True for a difference of temperatures.</param>
public sealed record PictureAxis(string Name, string Unit, bool IsDifference = false);

/// <summary>A line.</summary>
/// <param name="Id">Name in machine-readable output.</param>
/// <param name="Name">Label.</param>
/// <param name="Role">Colour.</param>
/// <param name="Points">From left to right, SI.</param>
/// <param name="Thin">True for a second voice or a limit.</param>
/// <param name="RelativeBand">Share by which the line may be off either way (one standard deviation), drawn as a band; null for none.</param>
public sealed record PictureLine(string Id, string Name, PictureRole Role, IReadOnlyList<(double X, double Y)> Points, bool Thin = false, double? RelativeBand = null);

/// <summary>A marked point.</summary>
/// <param name="Name">Label.</param>
/// <param name="Role">Colour.</param>
/// <param name="X">SI.</param>
/// <param name="Y">SI.</param>
public sealed record PictureMark(string Name, PictureRole Role, double X, double Y)
{
    /// <summary>Number written beside it, SI, when it is not the height: the pinch's difference, say.</summary>
    public (double Value, PictureAxis Of)? Shown { get; init; }
}

/// <summary>An upright line.</summary>
/// <param name="Name">Label.</param>
/// <param name="Role">Colour.</param>
/// <param name="X">SI.</param>
public sealed record PictureUpright(string Name, PictureRole Role, double X);

/// <summary>A row of named ranges along the horizontal axis.</summary>
/// <param name="Name">Short name of the row.</param>
/// <param name="Role">Colour.</param>
/// <param name="Places">Position (SI) and name at each station, from left to right.</param>
public sealed record PictureRanges(string Name, PictureRole Role, IReadOnlyList<(double X, string Name)> Places);

/// <summary>Horizontal bars.</summary>
public sealed record BarPicture(string Id, string Title, string Reading) : PartPicture(Id, Title, Reading)
{
    /// <summary>What their length shows, without unit.</summary>
    public required PictureAxis Axis { get; init; }
    /// <summary>Bars from top to bottom.</summary>
    public required IReadOnlyList<PictureBar> Bars { get; init; }
}

/// <summary>One bar.</summary>
/// <param name="Name">Label.</param>
/// <param name="Value">SI.</param>
/// <param name="Deviation">One standard deviation; null when not known.</param>
/// <param name="Role">Colour.</param>
public sealed record PictureBar(string Name, double Value, double? Deviation, PictureRole Role);
