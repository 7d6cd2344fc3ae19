using System.Globalization;
using System.Text.Json.Nodes;
using YamlDotNet.Core;
using YamlDotNet.RepresentationModel;

namespace Coldwright.Machine.Tests.Files;

/// <summary>A YAML text as an editor's schema check sees it: plain numbers are numbers, everything else is text.</summary>
internal static class YamlAsJson
{
    public static JsonNode Convert(string yaml)
    {
        var stream = new YamlStream();
        stream.Load(new StringReader(yaml));
        return Node(stream.Documents[0].RootNode)!;
    }

    private static JsonNode? Node(YamlNode node) => node switch
    {
        YamlMappingNode map => new JsonObject(map.Children.Select(c => KeyValuePair.Create(((YamlScalarNode)c.Key).Value!, Node(c.Value)))),
        YamlSequenceNode list => new JsonArray([.. list.Children.Select(Node)]),
        YamlScalarNode { Style: ScalarStyle.Plain } scalar when double.TryParse(scalar.Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) => JsonValue.Create(number),
        YamlScalarNode scalar => JsonValue.Create(scalar.Value),
        _ => throw new InvalidOperationException($"unexpected {node.NodeType}"),
    };
}
