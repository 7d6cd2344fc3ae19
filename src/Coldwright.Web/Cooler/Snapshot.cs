using System.Security.Cryptography;
using System.Text;
using Coldwright.Machine.Files;

namespace Coldwright.Web.Cooler;

/// <summary>The cooler's folder as it was read at one moment.</summary>
/// <param name="Text">Text of <c>machine.yaml</c>; null when it is no text.</param>
/// <param name="ShopText">Text of <c>shop.yaml</c>; null when there is none.</param>
/// <param name="Folder">What the texts mean.</param>
internal sealed record Snapshot(string? Text, string? ShopText, MachineFolder Folder)
{
    /// <summary>A short name for exactly these texts.</summary>
    public string Revision { get; } = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{Text}\0{ShopText}")))[..16];

    /// <summary>True when it can be rated.</summary>
    public bool IsGood => Folder is { IsGood: true, Machine: not null, Layout: not null };

    /// <summary>The same shop with another machine.</summary>
    public Snapshot With(string text) => Of(text, ShopText, Folder.Directory);

    /// <summary>Reads two texts.</summary>
    public static Snapshot Of(string text, string? shopText, string directory) =>
        new(text, shopText, MachineFolderReader.ReadTexts(text, shopText) with { Directory = directory });
}
