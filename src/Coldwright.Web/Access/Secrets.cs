using System.Security.Cryptography;
using System.Text;

namespace Coldwright.Web.Access;

/// <summary>Words that cannot be guessed, and their comparison in a time that tells nothing.</summary>
internal static class Secrets
{
    /// <summary>128 random bits, as 32 letters and digits.</summary>
    public static string New() => Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(16));

    public static bool Same(string? given, string expected) =>
        given is not null && CryptographicOperations.FixedTimeEquals(SHA256.HashData(Encoding.UTF8.GetBytes(given)), SHA256.HashData(Encoding.UTF8.GetBytes(expected)));
}
