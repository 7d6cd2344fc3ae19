using Coldwright.Machine.Files.Keys;

namespace Coldwright.Machine.Tests.Files;

/// <summary>Every group of keys of <c>machine.yaml</c>, with the way to it.</summary>
internal static class AllKeys
{
    /// <summary>The groups by their way in the file: <c>room</c>, <c>compressor.nameplate</c>. A group used at two places comes twice.</summary>
    public static IReadOnlyList<(string Way, FileSection Section)> Sections { get; } =
    [
        .. Within("", MachineKeys.Root).Skip(1),
        .. PartKinds.All.SelectMany(k => Within(k.Word, k.Section)),
    ];

    private static IEnumerable<(string, FileSection)> Within(string way, FileSection section) =>
        section.Keys.SelectMany(k => k.Form switch
        {
            SectionForm s => Within(Join(way, k.Name), s.Section),
            SectionListForm s => Within(Join(way, k.Name), s.Section),
            _ => [],
        }).Prepend((way, section));

    private static string Join(string way, string key) => way.Length == 0 ? key : $"{way}.{key}";
}
