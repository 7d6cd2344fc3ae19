namespace Coldwright.Runs.Live;

/// <summary>Who asks a broker. The password is never shown.</summary>
/// <param name="User">Name.</param>
/// <param name="Password">Password; may be empty.</param>
public sealed record BrokerLogin(string User, string Password)
{
    /// <inheritdoc/>
    public override string ToString() => User;
}
