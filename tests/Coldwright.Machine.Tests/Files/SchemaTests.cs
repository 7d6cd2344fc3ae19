using System.Text.Json;
using System.Text.Json.Nodes;
using Coldwright.Machine.Files;
using Coldwright.Machine.Files.Keys;
using Json.Schema;

namespace Coldwright.Machine.Tests.Files;

/// <summary>The schemas in data/schema: written from the key tables, true to the reader, and good for every example.</summary>
public sealed class SchemaTests
{
    public static TheoryData<string> Folders => ExampleFoldersAreGood.Folders;

    [Theory]
    [InlineData("machine")]
    [InlineData("shop")]
    public void TheFileIsWhatTheKeyTablesSay(string name)
    {
        var path = Path.Combine(Examples.Root, "data", "schema", name + ".schema.json");
        var expected = name == "machine" ? SchemaText.Machine() : SchemaText.Shop();
        // To write the files anew after a change of the key tables: COLDWRIGHT_WRITE_SCHEMA=1 ./test
        if (Environment.GetEnvironmentVariable("COLDWRIGHT_WRITE_SCHEMA") == "1") File.WriteAllText(path, expected);
        Assert.Equal(expected, File.ReadAllText(path));
    }

    [Theory]
    [MemberData(nameof(Folders))]
    public void EveryExampleKeepsTheSchema(string folder)
    {
        AssertValid("machine", File.ReadAllText(Examples.Folder(folder, "machine.yaml")));
        AssertValid("shop", File.ReadAllText(Examples.Folder(folder, "shop.yaml")));
    }

    [Fact]
    public void TheStarterKeepsTheSchema()
    {
        AssertValid("machine", StarterText.Machine);
        AssertValid("shop", StarterText.Shop);
    }

    [Theory]
    [InlineData("length: 16 m", "legnth: 16 m")]
    [InlineData("kind: throttle", "kind: throtle")]
    [InlineData("type: rotary", "type: rotery")]
    [InlineData("length: 16 m", "length: 16")]
    [InlineData("    approach: 6 K\n", "")]
    [InlineData("    conductance: 100 W/K\n", "    legnth: 16 m\n")]
    [InlineData("    wall: 180 mm\n", "")]
    public void TheSchemaRefusesWhatTheReaderRefuses(string old, string replacement)
    {
        var text = Examples.With(old, replacement);
        Assert.False(Evaluate("machine", text).IsValid);
        Assert.NotEmpty(MachineFolderReader.ReadTexts(text).Problems);
    }

    [Fact]
    public void EveryKindHasItsBranchWithTheReadersKeys()
    {
        var root = JsonNode.Parse(SchemaText.Machine())!;
        var branches = root["properties"]!["parts"]!["additionalProperties"]!["allOf"]!.AsArray();
        var keys = branches.ToDictionary(
            b => b!["if"]!["properties"]!["kind"]!["const"]!.GetValue<string>(),
            b => b!["then"]!["properties"]!.AsObject().Select(p => p.Key).ToArray());
        Assert.Equal(PartKinds.Words.Order(), keys.Keys.Order());
        Assert.All(PartKinds.All, kind => Assert.Equal(kind.Section.Keys.Select(k => k.Name), keys[kind.Word]));
        Assert.Equal(MachineKeys.Root.Keys.Select(k => k.Name), root["properties"]!.AsObject().Select(p => p.Key));
    }

    private static void AssertValid(string schema, string yaml)
    {
        var result = Evaluate(schema, yaml);
        Assert.True(result.IsValid, JsonSerializer.Serialize(result));
    }

    private static EvaluationResults Evaluate(string schema, string yaml)
    {
        var parsed = JsonSchema.FromText(schema == "machine" ? SchemaText.Machine() : SchemaText.Shop());
        using var document = JsonDocument.Parse(YamlAsJson.Convert(yaml).ToJsonString());
        return parsed.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
    }
}
