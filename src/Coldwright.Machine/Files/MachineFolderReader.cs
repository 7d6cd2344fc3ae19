using Coldwright.Fluids.Substances;
using Coldwright.Machine.Description;
using Coldwright.Machine.Layout;

namespace Coldwright.Machine.Files;

/// <summary>Reads a machine folder: <c>machine.yaml</c> and, when it is there, <c>shop.yaml</c>.</summary>
public static class MachineFolderReader
{
    /// <summary>Name of the file that describes the machine.</summary>
    public const string MachineFile = "machine.yaml";

    /// <summary>Name of the file that describes the shop.</summary>
    public const string ShopFile = "shop.yaml";

    /// <summary>Reads the folder; bad input never throws, it ends in <see cref="MachineFolder.Problems"/>.</summary>
    /// <param name="directory">The folder.</param>
    public static MachineFolder Read(string directory)
    {
        var machinePath = Path.Combine(directory, MachineFile);
        if (!Directory.Exists(directory)) return Empty(directory, File.Exists(directory)
            ? $"'{directory}' is a file; give the folder that holds {MachineFile}"
            : $"there is no folder '{directory}'; 'coldwright new {directory}' writes a starter folder there");
        if (!File.Exists(machinePath)) return Empty(directory,
            $"'{directory}' holds no {MachineFile}. A machine folder holds {MachineFile} (the cooler), {ShopFile} (prices) and runs/ (what was measured); 'coldwright new {directory}' writes a commented starter");

        var problems = new ProblemList(MachineFile);
        var text = FileText.Read(machinePath, problems);
        var shopPath = Path.Combine(directory, ShopFile);
        var hasShop = File.Exists(shopPath);
        var shopProblems = new ProblemList(ShopFile);
        var shopText = hasShop ? FileText.Read(shopPath, shopProblems) : null;
        var folder = Read(directory, text, problems, shopText, shopProblems);
        return hasShop ? folder : folder with { Notes = [.. folder.Notes, $"there is no {ShopFile}, so nothing can be said about cost"] };
    }

    /// <summary>Reads texts instead of files; what is null is not read.</summary>
    /// <param name="machineText">Text of <c>machine.yaml</c>.</param>
    /// <param name="shopText">Text of <c>shop.yaml</c>; null when there is none.</param>
    public static MachineFolder ReadTexts(string machineText, string? shopText = null) =>
        Read("", machineText, new ProblemList(MachineFile), shopText, new ProblemList(ShopFile));

    private static MachineFolder Read(string directory, string? machineText, ProblemList problems, string? shopText, ProblemList shopProblems)
    {
        var notes = new List<string>();
        LoopLayout? layout = null;
        var machine = machineText is null ? null : MachineReader.Read(machineText, problems, notes, name => SubstanceCatalog.Get(name).MolarMass, out layout);
        var shop = shopText is null ? null : ShopReader.Read(shopText, shopProblems);
        if (machine is not null && shop is not null) notes.AddRange(Unpriced(machine, shop));
        return new MachineFolder
        {
            Directory = directory,
            Machine = machine,
            Layout = machine is null ? null : layout,
            Shop = shop,
            Problems = [.. problems.InFileOrder(), .. shopProblems.InFileOrder()],
            Notes = notes,
        };
    }

    private static IEnumerable<string> Unpriced(MachineDescription machine, ShopDescription shop)
    {
        var used = machine.Charge.Mixture.Names.Concat(machine.PartsOf<FeedPart>().Select(f => f.Gas)).Distinct();
        var missing = used.Where(g => !shop.GasPerKg.ContainsKey(g)).ToArray();
        if (missing.Length > 0) yield return $"{ShopFile} has no price for {string.Join(", ", missing)}; costs count them as 0";
    }

    private static MachineFolder Empty(string directory, string message) =>
        new() { Directory = directory, Problems = [new FileProblem(MachineFile, 0, 0, message)], Notes = [] };
}
