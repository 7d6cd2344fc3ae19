namespace Coldwright.Blind;

/// <summary>The file of the blind machine.</summary>
public static class BlindMachine
{
    /// <summary>Text of its <c>machine.yaml</c>.</summary>
    public static string Yaml
    {
        get
        {
            using var stream = typeof(BlindMachine).Assembly.GetManifestResourceStream("machine.yaml")!;
            using var reader = new StreamReader(stream);
            return reader.ReadToEnd();
        }
    }
}
