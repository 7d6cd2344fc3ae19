namespace Coldwright.Runs.Live;

/// <summary>A broker cannot be reached or does not want us.</summary>
/// <param name="message">Why, in words.</param>
public sealed class BrokerRefusal(string message) : Exception(message);
