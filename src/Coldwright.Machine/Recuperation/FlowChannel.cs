namespace Coldwright.Machine.Recuperation;

/// <summary>What friction and heat transfer ask of the passage of one stream; parallel tubes share the flow evenly.</summary>
/// <param name="AreaM2">Flow area of all parallel passages, m2.</param>
/// <param name="HydraulicDiameterM">Four times flow area over wetted perimeter, m.</param>
/// <param name="HeatedPerimeterM">Perimeter of the wall that parts the streams, all passages, m.</param>
/// <param name="AnnulusRatio">Core over bore diameter of an annulus, below 1; 0 for a tube.</param>
/// <param name="DiameterOverCoil">Hydraulic diameter over mean coil diameter; 0 for straight.</param>
/// <param name="RelativeRoughness">Roughness over hydraulic diameter.</param>
public sealed record FlowChannel(double AreaM2, double HydraulicDiameterM, double HeatedPerimeterM, double AnnulusRatio, double DiameterOverCoil, double RelativeRoughness);
